#pragma once
// Which way current runs through a circuit that nobody has switched on: nets and parts in layers.

#include "core/diagram/diagram.h"

#include <vector>

namespace tiepoint {

struct SheetRanks {
    std::vector<int> netRank;   ///< even; by net
    std::vector<int> partRank;  ///< odd; by part
    std::vector<std::vector<char>>
        isAfter;                 ///< by part, by lead: its net lies after the part (in the direction of current)
    std::vector<int> component;  ///< by part
    int components = 0;
    std::vector<char> isReturn;  ///< by net: the minus of the supplies, where current ends
    std::vector<char> supplies;  ///< by part
};

/// `key` by part: breaks ties. `beside`: supplies stand before the first layer with both leads after them, not across the layers.
SheetRanks rankCircuit(const Netlist& netlist, const std::vector<double>& key, bool beside);

}  // namespace tiepoint
