#include "ui/export/paper_plan.h"

#include <algorithm>
#include <cmath>

namespace tiepoint::ui {
namespace {

// ISO 216 and ANSI/ASME Y14.1, upright.
constexpr QSizeF kA4{210, 297}, kLetter{215.9, 279.4};
constexpr double kSideMm = 12;   ///< no printer prints up to the edge; marks stand here
constexpr double kBelowMm = 20;  ///< room for the caption too
constexpr double kOverlapMm = 10;

QRectF roomOn(const QSizeF& paper) {
    return {kSideMm, kSideMm, paper.width() - 2 * kSideMm, paper.height() - kSideMm - kBelowMm};
}

/// How many parts of at most `room`, each sharing the overlap with the next, are as long as `length`.
int partsFor(double length, double room) {
    constexpr double kSlack = 1e-6;
    if (length <= room + kSlack) return 1;
    return 1 + static_cast<int>(std::ceil((length - room - kSlack) / (room - kOverlapMm)));
}

PaperPlan planOn(const QSizeF& picture, const QSizeF& paper, bool isAcross) {
    const QRectF room = roomOn(paper);
    PaperPlan plan{paper, isAcross, partsFor(picture.height(), room.height()), partsFor(picture.width(), room.width()),
                   0,     {}};
    if (plan.isTiled()) plan.overlapMm = kOverlapMm;
    const QSizeF part((picture.width() + (plan.columns - 1) * kOverlapMm) / plan.columns,
                      (picture.height() + (plan.rows - 1) * kOverlapMm) / plan.rows);
    const QPointF at = room.center() - QPointF(part.width(), part.height()) / 2;
    for (int row = 0; row < plan.rows; ++row) {
        for (int column = 0; column < plan.columns; ++column) {
            const QPointF corner(column * (part.width() - kOverlapMm), row * (part.height() - kOverlapMm));
            plan.sheets.push_back({row, column, QRectF(corner, part), at});
        }
    }
    return plan;
}

}  // namespace

PaperPlan planSheets(const QSizeF& picture, Paper paper) {
    const QSizeF upright = paper == Paper::A4 ? kA4 : kLetter;
    PaperPlan standing = planOn(picture, upright, false), lying = planOn(picture, upright.transposed(), true);
    const auto count = [](const PaperPlan& plan) { return plan.rows * plan.columns; };
    if (count(standing) != count(lying)) return count(standing) < count(lying) ? standing : lying;
    return picture.width() > picture.height() ? lying : standing;
}

QRectF printableRoom(const PaperPlan& plan) { return roomOn(plan.paper); }

}  // namespace tiepoint::ui
