#pragma once
// One part of a diagram with its symbol, its words and the wires that turn its leads towards where they go.

#include "core/diagram/sheet_graph.h"

namespace tiepoint {

struct BlockWish {
    SheetFlow flow = SheetFlow::Rightward;
    SymbolStyle style = SymbolStyle::Iec;
    bool beside = false;            ///< a supply before the first layer
    bool flipAcross = false;        ///< rather turned over about the current's axis, where that costs nothing
    std::vector<char> isAfter;      ///< by lead
    std::vector<double> leadOrder;  ///< of a box, by lead; empty: as the kind has them
};

SheetBlock makeBlock(const Netlist& netlist, int part, const BlockWish& wish);

/// From along and across to the sheet.
inline Point onSheet(SheetFlow flow, Point alongAcross) {
    return flow == SheetFlow::Rightward ? alongAcross : Point{alongAcross.y, alongAcross.x};
}

}  // namespace tiepoint
