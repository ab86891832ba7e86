#include "core/compare/doing.h"

#include "core/netlist/series.h"
#include "core/snapshot/lit.h"

#include <algorithm>

namespace tiepoint {
namespace {

std::vector<Throw> countedControls(const ComparedSide& side, bool onlyUsed) {
    const Wiring wiring = wiringOf(*side.circuit, !onlyUsed);
    std::vector<Throw> controls = throwsOf(side.bench());
    const std::vector<Throw> knobs = knobsOf(side.bench());
    controls.insert(controls.end(), knobs.begin(), knobs.end());
    std::erase_if(controls, [&](const Throw& each) { return !wiring.counts[static_cast<std::size_t>(each.part)]; });
    return controls;
}

}  // namespace

Doing::Doing(const ComparedSide& side, bool onlyUsed)
    : side_(side),
      controls_(countedControls(side, onlyUsed)),
      solver_(side.layout, controls_) {
    const Wiring wiring = wiringOf(*side.circuit, !onlyUsed);
    for (int part = 0; part < std::ssize(side.bench().parts); ++part)
        if (side.part(part).kind->emitsLight && wiring.counts[static_cast<std::size_t>(part)]) lights_.push_back(part);
    plan_ = planPositions(*side.layout, controls_, present());
}

Digits Doing::present() const {
    Digits digits = digitsOf(controls_, side_.bench(), {});
    for (std::size_t c = 0; c < digits.size(); ++c)  // a knob that stands elsewhere is tried in its places alone
        digits[c] = std::min(digits[c], controls_[c].values - 1);
    return digits;
}

std::vector<Digits> Doing::positions() const {
    std::vector<Digits> all = plan_.others;
    all.insert(all.begin(), present());
    return all;
}

const Doing::Row& Doing::rowAt(const Digits& digits) {
    Row& row = rows_[digits];
    if (row.snapshot) return row;
    row.snapshot = solver_.solve(digits);
    for (const int light : lights_) row.looks.push_back({isLit(*row.snapshot, light), row.snapshot->brightness(light)});
    return row;
}

}  // namespace tiepoint
