// Joining: a sheet is cut along its left and upper edge where it has a neighbour there, and laid over that neighbour, on which ticks
// show where the edge belongs. The middle of what both show bears the same cross on both, so that the joint can be checked against the light.

#include "ui/export/sheet_marks.h"

#include "ui/paint/lettering.h"

#include <array>

namespace tiepoint::ui {
namespace {

const QColor kPaperInk(0x0b1016);
constexpr Lettering kCaption{3.2, QFont::Medium}, kSmallPrint{2.6, QFont::Normal};
constexpr double kHairMm = 0.2;
constexpr double kTickFromMm = 1, kTickToMm = 6;  ///< from the picture outwards
constexpr double kCrossAwayMm = 3.5, kCrossMm = 1.6, kRingMm = 1;
constexpr double kWordsGapMm = 1.5;
constexpr double kRuleMm = 50, kRuleTickMm = 1.4;
constexpr double kCaptionBelowMm = 8, kRuleBelowMm = 13;

enum class Side { Left, Right, Top, Bottom };

QString placeWords(int row, int column) { return QStringLiteral("row %1, column %2").arg(row + 1).arg(column + 1); }

void paintCross(QPainter& painter, QPointF at) {
    painter.drawLine(at - QPointF(kCrossMm, 0), at + QPointF(kCrossMm, 0));
    painter.drawLine(at - QPointF(0, kCrossMm), at + QPointF(0, kCrossMm));
    painter.drawEllipse(at, kRingMm, kRingMm);
}

/// The marks of one joint at both of its ends. `along` leads from the joint's edge into what both sheets show, `out` off the picture.
struct JointEnds {
    std::array<QPointF, 2> edge;
    QPointF along, out;
};

JointEnds endsOf(Side side, const QRectF& part, double overlapMm) {
    switch (side) {
        case Side::Left:
            return {{part.topLeft(), part.bottomLeft()}, {1, 0}, {0, 1}};
        case Side::Right:
            return {
                {part.topRight() - QPointF(overlapMm, 0), part.bottomRight() - QPointF(overlapMm, 0)}, {1, 0}, {0, 1}};
        case Side::Top:
            return {{part.topLeft(), part.topRight()}, {0, 1}, {1, 0}};
        case Side::Bottom:
            break;
    }
    return {{part.bottomLeft() - QPointF(0, overlapMm), part.bottomRight() - QPointF(0, overlapMm)}, {0, 1}, {1, 0}};
}

/// Words beside the first end of a joint: before its edge, or behind its cross. Those of level joints run upwards.
void paintJointWords(QPainter& painter, const JointEnds& ends, const QString& words, bool behind, double overlapMm) {
    const double away = behind ? overlapMm / 2 + kCrossMm + kWordsGapMm : -kWordsGapMm;
    painter.save();
    painter.translate(ends.edge[0] + ends.along * away - ends.out * kCrossAwayMm);
    const bool isLevel = ends.along.y() != 0;
    if (isLevel) painter.rotate(-90);
    const bool toTheLeft = isLevel ? behind : !behind;
    drawText(painter, words, {0, 0}, kSmallPrint, kPaperInk, toTheLeft ? Qt::AlignRight : Qt::AlignLeft);
    painter.restore();
}

void paintJoint(QPainter& painter, Side side, const QRectF& part, const PaperPlan& plan, const PlannedSheet& sheet) {
    const JointEnds ends = endsOf(side, part, plan.overlapMm);
    painter.setPen(QPen(kPaperInk, kHairMm));
    painter.setBrush(Qt::NoBrush);
    for (const double outwards : {-1.0, 1.0}) {
        const QPointF edge = ends.edge[outwards < 0 ? 0 : 1];
        painter.drawLine(edge + ends.out * (outwards * kTickFromMm), edge + ends.out * (outwards * kTickToMm));
        paintCross(painter, edge + ends.along * (plan.overlapMm / 2) + ends.out * (outwards * kCrossAwayMm));
    }
    const bool isCut = side == Side::Left || side == Side::Top;
    const int row = sheet.row + (side == Side::Top ? -1 : side == Side::Bottom ? 1 : 0);
    const int column = sheet.column + (side == Side::Left ? -1 : side == Side::Right ? 1 : 0);
    const QString words = isCut ? QStringLiteral("cut here and lay it over %1").arg(placeWords(row, column))
                                : QStringLiteral("%1 goes on from here").arg(placeWords(row, column));
    paintJointWords(painter, ends, words, isCut, plan.overlapMm);
}

/// Ends with tidy strokes, so that it can be measured.
void paintRule(QPainter& painter, QPointF left) {
    painter.setPen(QPen(kPaperInk, kHairMm));
    painter.drawLine(left, left + QPointF(kRuleMm, 0));
    for (const double x : {0.0, kRuleMm})
        painter.drawLine(left + QPointF(x, -kRuleTickMm), left + QPointF(x, kRuleTickMm));
    drawText(painter, QStringLiteral("50 mm. Longer or shorter? Print again at 100 %. Holes are 2.54 mm apart."),
             left + QPointF(kRuleMm + 2 * kWordsGapMm, 0), kSmallPrint, kPaperInk, Qt::AlignLeft);
}

/// At most so broad, with an ellipsis where something is missing.
QString fitted(QString text, double widthMm) {
    if (textWidthMm(text, kCaption) <= widthMm) return text;
    while (!text.isEmpty() && textWidthMm(text + QChar(0x2026), kCaption) > widthMm) text.chop(1);
    return text + QChar(0x2026);
}

}  // namespace

QString sheetName(const PaperPlan& plan, const PlannedSheet& sheet) {
    if (!plan.isTiled()) return {};
    return QStringLiteral("Sheet %1 of %2: %3")
        .arg(sheet.row * plan.columns + sheet.column + 1)
        .arg(plan.rows * plan.columns)
        .arg(placeWords(sheet.row, sheet.column));
}

void paintSheetMarks(QPainter& painter, const PaperPlan& plan, const PlannedSheet& sheet, const QString& title) {
    const QRectF part(sheet.at, sheet.part.size());
    if (sheet.column > 0) paintJoint(painter, Side::Left, part, plan, sheet);
    if (sheet.column + 1 < plan.columns) paintJoint(painter, Side::Right, part, plan, sheet);
    if (sheet.row > 0) paintJoint(painter, Side::Top, part, plan, sheet);
    if (sheet.row + 1 < plan.rows) paintJoint(painter, Side::Bottom, part, plan, sheet);

    const QRectF room = printableRoom(plan);
    const QString name = sheetName(plan, sheet);
    const double nameWidth = name.isEmpty() ? 0 : textWidthMm(name, kCaption) + 2 * kWordsGapMm;
    drawText(painter, fitted(title, room.width() - nameWidth), {room.left(), room.bottom() + kCaptionBelowMm}, kCaption,
             kPaperInk, Qt::AlignLeft);
    drawText(painter, name, {room.right(), room.bottom() + kCaptionBelowMm}, kCaption, kPaperInk, Qt::AlignRight);
    paintRule(painter, {room.left(), room.bottom() + kRuleBelowMm});
}

}  // namespace tiepoint::ui
