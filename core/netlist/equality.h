#pragma once
// Whether two circuits are equal up to the names of their parts and nets, the order in which they stand and what else doesn't count.

#include "core/netlist/likeness.h"
#include "core/netlist/netlist.h"

#include <cstdint>
#include <vector>

namespace tiepoint {

enum class Verdict : std::uint8_t { Equal, Different, Undecided };

struct Correspondence {
    Verdict verdict = Verdict::Different;
    // Of equal circuits, else empty.
    std::vector<int>
        partOf;  ///< by part of the first: the part of the second that does its work; -1 where it doesn't count
    std::vector<int>
        netOf;  ///< by net of the first; -1 where it joins nothing, or stands inside a chain whose order is free
};

/// Exact: equal means that the correspondence was checked edge by edge, different that there is none. Undecided only after
/// `likeness.effort`. Pure, stoppable (core/base/stopping.h).
Correspondence compareCircuits(const Netlist& first, const Netlist& second, const Likeness& likeness = {});

/// A digest of the circuit: equal circuits have the same under the same likeness, and different ones hardly ever. Within a tolerance
/// numbers don't go into it, since no digest can say "about". The same on every machine. Pure, stoppable.
std::uint64_t canonicalHash(const Netlist& netlist, const Likeness& likeness = {});

}  // namespace tiepoint
