#pragma once
// The nets at the ends of supplies. Pure; safe from any thread.

#include "core/nets/layout.h"

#include <vector>

namespace tiepoint {

struct SupplyNets {
    int part = -1;              ///< the supply
    int plus = -1, minus = -1;  ///< nets
    int group = 0;              ///< supplies that share a net are one group, such as cells in a row
};
/// By supply, in the order of the bench; only supplies with both ends plugged in or in sockets that jumpers reach.
std::vector<SupplyNets> supplyNets(const Layout& layout);

}  // namespace tiepoint
