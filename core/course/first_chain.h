#pragma once
// The first build as it stands on the board: the resistor and the LED that are furthest on, in either order between plus and minus.
// Pure; safe from any thread.

#include "core/snapshot/snapshot.h"

namespace tiepoint {

/// One resistor and one LED, and how far they have come.
struct FirstChain {
    int resistor = -1, led = -1, supply = -1;  ///< parts, or -1
    /// 0: no resistor between two pieces of metal; 1: no LED that meets it; 2: plus is missing; 3: minus is, or light; 4: it is lit.
    int step = 0;
    bool reversed = false;                ///< between plus and minus, but the wrong way round
    int plusEnd = -1, minusEnd = -1;      ///< once they meet: the nets where plus and minus belong
    bool anodeInside = true;              ///< the anode is where they meet, so plus belongs to the resistor's outer end
    int resistorLead = -1, ledLead = -1;  ///< once they meet: the leads at their outer ends
};

FirstChain firstChain(const Snapshot& snapshot);

}  // namespace tiepoint
