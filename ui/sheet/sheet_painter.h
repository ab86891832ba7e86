#pragma once
// The circuit diagram on paper and on the screen: symbols, wires, current, light and volts of one instant, by the laws of the board. Draws in
// millimetres of the sheet; the caller sets the painter's transform. Use from the thread that paints.

#include "core/diagram/bench_diagram.h"
#include "ui/paint/picture.h"

#include <QPainter>

namespace tiepoint::ui {

struct SheetPicture {
    std::shared_ptr<const BenchDiagram> sheet;  ///< never null
    std::shared_ptr<const Snapshot> snapshot;   ///< null, or of the same layout: else nothing is lit
    const Theme* theme = nullptr;
    Views views;
    double fullScaleAmpere = 1e-3;
    double phaseMm = 0;
    int hoverNet = -1;           ///< of the layout; lit with all its wires
    std::string hoverPart;       ///< lit with a rim, and told
    bool paper = true;           ///< draws its own ground
    double settled = 1;          ///< below 1 parts are on their way, and wires come up
    std::vector<char> newWires;  ///< by wire: those that come up; empty: all

    const Snapshot* live() const {
        return snapshot && snapshot->layout == sheet->layout && snapshot->status() == Status::Solved ? snapshot.get()
                                                                                                     : nullptr;
    }
    const Inputs& inputs() const { return snapshot ? *snapshot->inputs : *noInputs(); }
};

void paintSheet(QPainter& painter, const SheetPicture& picture);

/// What lies under a point of the sheet: a part, else a net of the layout; -1 where nothing does.
struct UnderSheet {
    int part = -1;
    int net = -1;
};
UnderSheet underSheet(const BenchDiagram& sheet, Point at);

/// The words of the tag at a part that is pointed at: "takes 2.90 V at 8.78 mA".
QString sheetPartWords(const SheetPicture& picture, int part);

}  // namespace tiepoint::ui
