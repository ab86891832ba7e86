#pragma once
// How a picture in true size is parted among sheets of paper. Pure functions of sizes, in mm.

#include <QRectF>
#include <QSizeF>

#include <vector>

namespace tiepoint::ui {

enum class Paper { A4, Letter };

/// One sheet: which part of the picture it shows, and where on the paper. Rows and columns count from 0.
struct PlannedSheet {
    int row = 0, column = 0;
    QRectF part;  ///< of the picture, from its own top left corner; neighbours share `overlapMm`
    QPointF at;   ///< of the part's top left corner on the paper
};

struct PaperPlan {
    QSizeF paper;  ///< as it lies, upright or across
    bool isAcross = false;
    int rows = 1, columns = 1;
    double overlapMm = 0;              ///< what neighbours share; 0 on a single sheet
    std::vector<PlannedSheet> sheets;  ///< row by row

    bool isTiled() const { return rows * columns > 1; }
};

/// The plan with the fewest sheets; where both ways of laying the paper need as many, it lies as the picture does. All sheets show parts of
/// the same size, in the middle of the room that printers can print on.
PaperPlan planSheets(const QSizeF& picture, Paper paper);

/// Where on a sheet a picture may lie; marks stand around it, the caption below.
QRectF printableRoom(const PaperPlan& plan);

}  // namespace tiepoint::ui
