#pragma once
// The leads of a symbol that don't look where their wires go: each leaves the symbol, turns and runs round it, clear of the symbol, of the
// other leads and of the other wires that turn. Points: x along the current, y across, from the symbol's middle.

#include "core/diagram/sheet_graph.h"

#include <vector>

namespace tiepoint {

/// A lead of a symbol in its pose.
struct PosedLead {
    int lead = 0;
    int net = -1;  ///< -1: hangs free
    Point at;
    Point out;          ///< the way it leaves, of length 1
    bool after = true;  ///< whether its wire goes towards the layers that follow
};

struct TurnedLeads {
    std::vector<SheetPort> ports;
    std::vector<InnerWire> wires;
    std::vector<Point> openEnds;
    double low = 0, high = 0;  ///< how far wires that turn or hang reach across; within the body where none does
};

/// `highFirst`: a lead from the middle of a side turns towards the high side.
TurnedLeads turnLeads(const std::vector<PosedLead>& leads, const Rect& body, bool highFirst);

}  // namespace tiepoint
