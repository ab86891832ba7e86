#pragma once
// In what two circuits that are nearly equal differ: the best partial matching that is found, and what remains.

#include "core/netlist/likeness.h"
#include "core/netlist/netlist.h"

#include <vector>

namespace tiepoint {

struct CircuitDifference {
    /// A terminal that isn't on the net that corresponds to its partner's. One that has lost, or gained, only the company of parts without a
    /// partner hasn't moved.
    struct MovedLead {
        int part, lead;  ///< of the first circuit: the first lead of the terminal that is on a net, or its first
        int partner, otherLead;  ///< of the second
        int net, otherNet;       ///< where each is; -1: it joins nothing
    };
    struct OtherSetting {
        int part, partner;
        bool state;  ///< a state, else a value
        int index;   ///< as in the kind
    };
    std::vector<int> partOf;  ///< by part of the first: its partner in the second, or -1
    std::vector<int> netOf;   ///< by net of the first: the net of the second that it corresponds to, or -1
    std::vector<std::vector<int>>
        leadOf;  ///< by part and lead of the first: the partner's lead; empty for equal circuits
    std::vector<int> onlyInFirst, onlyInSecond;  ///< parts that count and have no partner
    std::vector<MovedLead> movedLeads;
    std::vector<OtherSetting> otherSettings;

    int count() const {
        return static_cast<int>(onlyInFirst.size() + onlyInSecond.size() + movedLeads.size() + otherSettings.size());
    }
};

/// A small set of differences that explains how the second circuit came of the first: none where the circuits are equal, else the smallest of
/// several that were looked for. It is a true account in any case: with these differences undone the circuits are equal. That it is the
/// smallest there is isn't promised. For circuits of up to some hundred parts: the time grows with the cube. Pure, stoppable.
CircuitDifference differenceOf(const Netlist& first, const Netlist& second, const Likeness& likeness = {});

}  // namespace tiepoint
