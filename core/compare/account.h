#pragma once
// In what two circuits differ, told as differences of the benches that they were read from. Pure.

#include "core/compare/comparison.h"
#include "core/netlist/difference.h"

namespace tiepoint {

/// A bench and its circuit; parts have the same numbers in both.
struct ComparedSide {
    std::shared_ptr<const Layout> layout;
    const Netlist* circuit = nullptr;
    bool hasPlaces = true;

    const Bench& bench() const { return *layout->bench; }
    const Part& part(int index) const { return bench().parts[static_cast<std::size_t>(index)]; }
};

/// What counts of two circuits here.
Likeness likenessFor(const ComparisonBounds& bounds);

/// The differences in words, as few as are enough: one slip where one explains all, else nets that should be joined or parted, parts the wrong
/// way round, single leads, parts and settings.
std::vector<BenchDifference> accountOf(const ComparedSide& mine, const ComparedSide& target,
                                       const CircuitDifference& difference);

/// The one slip that explains all differences, or nothing: in the words of the list of slips (core/slips).
std::vector<BenchDifference> slipAccount(const ComparedSide& mine, const ComparedSide& target,
                                         const CircuitDifference& difference,
                                         const std::vector<BenchDifference>& found);

/// Supplies of partners that are switched on here and off there.
std::vector<BenchDifference> switchedOtherwise(const ComparedSide& mine, const ComparedSide& target,
                                               const std::vector<int>& partOf);

}  // namespace tiepoint
