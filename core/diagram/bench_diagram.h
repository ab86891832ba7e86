#pragma once
// The diagram of a bench: which of its nets and parts is which on the sheet, and the current in every wire that is drawn.
// Immutable once made; safe from any thread.

#include "core/diagram/diagram.h"
#include "core/snapshot/snapshot.h"

#include <memory>
#include <vector>

namespace tiepoint {

/// A stretch that current can take on the sheet: a wire, or a part between one of its leads and another or its middle.
struct SheetWay {
    Point from, to;
    int fromPlace = 0, toPlace = 0;  ///< where stretches meet; dense
    int wire = -1;                   ///< of the diagram, or
    int part = -1, lead = -1;        ///< into the part by this lead
};

struct BenchDiagram {
    std::shared_ptr<const Layout> layout;
    Netlist netlist;
    Diagram diagram;
    std::vector<int> layoutNet;  ///< by net of the netlist
    std::vector<int> sheetNet;   ///< by net of the layout, or -1 where it joins nothing
    std::vector<SheetWay> ways;
    int places = 0;

    /// By way: amperes from its first end to its second. All zero without a solution.
    std::vector<double> currents(const Snapshot& snapshot) const;
};

std::shared_ptr<const BenchDiagram> diagramOf(std::shared_ptr<const Layout> layout, const DiagramHints& hints);
/// In the order of the bench's strips, or where `before` isn't null, with as little moved from there as possible.
std::shared_ptr<const BenchDiagram> diagramOf(std::shared_ptr<const Layout> layout, SymbolStyle style,
                                              const BenchDiagram* before = nullptr, double sheetRatio = 2);

}  // namespace tiepoint
