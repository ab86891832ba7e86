#include "core/course/kit_slips.h"

#include <algorithm>

namespace tiepoint {
namespace {

/// Whether the value that a hand took by mistake is in the drawer. Of supplies and of what is set by hand nothing is taken.
bool couldTake(const Kit& kit, const Bench& bench, const SetFigure& figure) {
    const Part* part = bench.findPart(figure.part);
    if (part == nullptr || figure.state || part->kind->isSupply || part->kind->family == "Meter") return true;
    if (!tellsApart(part->kind->values[static_cast<std::size_t>(figure.index)])) return true;
    Part taken = *part;
    taken.values[static_cast<std::size_t>(figure.index)] = figure.to;
    return hasPart(kit, taken);
}

bool couldHave(const Kit& kit, const SetRails& rails) {
    return kit.board == nullptr || rails.to != Rails::Split || kit.rails == Rails::Split;
}

}  // namespace

bool canHappenWith(const Kit& kit, const Bench& bench, const Slip& slip) {
    const BenchChange& wrong = slip.wrong;
    return std::ranges::all_of(wrong.figures, [&](const SetFigure& each) { return couldTake(kit, bench, each); }) &&
           std::ranges::all_of(wrong.rails, [&](const SetRails& each) { return couldHave(kit, each); });
}

}  // namespace tiepoint
