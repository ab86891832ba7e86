#include "core/compare/comparison.h"

#include "core/compare/account.h"
#include "core/compare/chain_order.h"
#include "core/compare/counted_bench.h"
#include "core/compare/same_behaviour.h"
#include "core/course/exercise.h"
#include "core/netlist/bench_netlist.h"
#include "core/netlist/equality.h"

#include <utility>

namespace tiepoint {
namespace {

/// The circuits as one, or as nearly as they are.
struct Matched {
    KnownPartners partners;
    CircuitDifference difference;  ///< of circuits that aren't one
};

/// Of circuits that aren't one. A part that hangs by one leg is there, only not joined in. Where chains stand in another order too, parts and
/// settings are told apart with the chains sorted; leads can't be, since there they don't stand as they stand on the bench.
CircuitDifference smallestDifference(const Netlist& mine, const Netlist& target, Likeness likeness) {
    likeness.unusedParts = true;
    likeness.seriesOrder = true;
    CircuitDifference asTheyStand = differenceOf(mine, target, likeness);
    if (asTheyStand.count() > 1 && chainsDifferInOrder(mine, target)) {
        CircuitDifference sorted = differenceOf(withChainsSorted(mine), withChainsSorted(target), likeness);
        if (sorted.count() > 0 && sorted.count() < asTheyStand.count() && sorted.movedLeads.empty()) {
            sorted.netOf = std::move(asTheyStand.netOf);
            return sorted;
        }
    }
    if (asTheyStand.count() > 0) return asTheyStand;
    likeness.unusedParts = false;
    return differenceOf(mine, target, likeness);
}

Result<Matched> match(const Netlist& mine, const Netlist& target, const ComparisonBounds& bounds) {
    Likeness likeness = likenessFor(bounds);
    // In the same order every place of a chain has its counterpart; else only its ends have.
    for (const bool inOrder : {true, false}) {
        likeness.seriesOrder = inOrder;
        Correspondence equal = compareCircuits(mine, target, likeness);
        if (equal.verdict == Verdict::Equal)
            return Matched{{std::move(equal.partOf), std::move(equal.netOf), true}, {}};
        if (equal.verdict == Verdict::Undecided)
            return Error{ErrorKind::Range, "the circuits are too alike in themselves to tell which part is which"};
    }
    Matched found;
    found.difference = smallestDifference(mine, target, likeness);
    found.partners = {found.difference.partOf, found.difference.netOf, false};
    return found;
}

}  // namespace

ComparisonTarget::ComparisonTarget(std::shared_ptr<const Bench> bench)
    : layout(buildLayout(std::make_shared<const Bench>(withoutInstruments(*bench)))),
      circuit(netlistOf(*layout)) {}

ComparisonTarget::ComparisonTarget(const Netlist& of)
    : layout(buildLayout(std::make_shared<const Bench>(withoutInstruments(benchForSolving(of))))),
      circuit(netlistOf(*layout)),
      hasPlaces(false) {}

Result<Comparison> compareBenches(std::shared_ptr<const Bench> mine, const ComparisonTarget& target,
                                  const ComparisonBounds& bounds) {
    const auto layout = buildLayout(std::make_shared<const Bench>(withoutInstruments(*mine)));
    const Netlist circuit = netlistOf(*layout);
    const ComparedSide here{layout, &circuit, true}, there{target.layout, &target.circuit, target.hasPlaces};
    const auto matched = match(circuit, target.circuit, bounds);
    if (!matched) return matched.error();
    Comparison comparison;
    comparison.sameCircuit = matched->partners.equal;
    if (!comparison.sameCircuit) comparison.differences = accountOf(here, there, matched->difference);
    for (BenchDifference& each : switchedOtherwise(here, there, matched->partners.partOf))
        comparison.differences.push_back(std::move(each));
    BehaviourCompared behaviour = compareBehaviour(here, there, matched->partners, bounds);
    comparison.sameBehaviour = behaviour.same;
    comparison.allPositions = behaviour.allPositions;
    comparison.behaviour = std::move(behaviour.seen);
    comparison.limits = limitsPassed(*layout->bench, target.limits);
    return comparison;
}

}  // namespace tiepoint
