#include "core/compare/doing.h"

#include "core/netlist/series.h"

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

const Snapshot& Doing::at(const Digits& digits) {
    auto& kept = rows_[digits];
    if (!kept) kept = solver_.solve(digits);
    return *kept;
}

}  // namespace tiepoint
