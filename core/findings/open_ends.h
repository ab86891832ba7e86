#pragma once
// Which ends of supplies a dark light's circuit reaches. Shared by one-wire and open-loop; pure.

#include "core/behaviour/supply_nets.h"
#include "core/findings/joining.h"

namespace tiepoint {

/// A light's circuit, all switches closed, as far as it goes without a supply.
struct OpenCircuit {
    bool plus = false, minus = false;  ///< of one group of supplies: the one that it reaches most of
    int group = -1;                    ///< that group, or -1
    std::vector<Hole> holes;           ///< occupied, of its nets that aren't a supply's
};
OpenCircuit reachOf(const Examination& examination, int light);

/// A suspicion about a light whose circuit is open towards the nets given: named with the nearest gap, mended by jumpers.
Suspicion openSuspicion(const Examination& examination, int light, const OpenCircuit& reach, std::string_view text,
                        const std::function<bool(int net)>& missing);

}  // namespace tiepoint
