#include "ui/paint/arrow_marks.h"

#include "ui/paint/shade.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace tiepoint::ui {
namespace {

constexpr double kThinRimShare = 0.6;
constexpr double kBreadthOffsetMm = 0.55, kBreadthGrowthMm = 1.75;
constexpr double kBedMm = 2.30;
constexpr double kSweepShare = 0.90, kSweepOffsetMm = 0.04;
constexpr double kThicknessMm = 0.42, kThicknessShare = 0.20;
constexpr double kJoinMm = 0.14;
constexpr double kBarMm = 0.34, kBarGapMm = 0.42;  ///< the tail bar of electrons
constexpr double kDotRadiusMm = 0.24;

}  // namespace

double arrowBreadthMm(double share) { return kBreadthOffsetMm + kBreadthGrowthMm * share; }

double arrowReachMm(double share, bool electrons) {
    constexpr double kRimMm = 0.45;
    const double half = arrowBreadthMm(share) / 2, sweep = kSweepShare * half + kSweepOffsetMm;
    const double tip = (sweep + kThicknessMm + kThicknessShare * 2 * half) / 2;
    return std::hypot(half, tip + (electrons ? kBarGapMm + kBarMm : 0)) + kRimMm;
}

double bedBreadthMm(double share) { return kBedMm * share; }

int arrowLevel(double share) {
    return std::clamp(static_cast<int>(std::lround(kArrowLevels * share)), 1, kArrowLevels);
}

double breadthOfLevel(int level) { return arrowBreadthMm(static_cast<double>(level) / kArrowLevels); }

QPainterPath chevron(double breadthMm, bool electrons) {
    const double half = breadthMm / 2, sweep = kSweepShare * half + kSweepOffsetMm;
    const double thick = kThicknessMm + kThicknessShare * breadthMm;
    const double tip = (sweep + thick) / 2;
    QPainterPath path;
    path.setFillRule(Qt::WindingFill);
    path.moveTo(tip, 0);
    path.lineTo(tip - sweep, half);
    path.lineTo(tip - sweep - thick, half);
    path.lineTo(tip - thick, 0);
    path.lineTo(tip - sweep - thick, -half);
    path.lineTo(tip - sweep, -half);
    path.closeSubpath();
    if (electrons) path.addRect(-tip - kBarGapMm - kBarMm, -half * 0.8, kBarMm, 2 * half * 0.8);
    return path;
}

void drawMark(QPainter& painter, const Theme& theme, const ArrowMark& mark, bool electrons) {
    painter.save();
    painter.translate(mark.at.x, mark.at.y);
    painter.setOpacity(painter.opacity() * mark.opacity);
    if (mark.look == MarkLook::Dot) {
        painter.setPen(outlinePen(theme.arrow, 0.16));
        painter.setBrush(theme.arrowCasing);
        painter.drawPath(disc({0, 0}, kDotRadiusMm));
        painter.restore();
        return;
    }
    painter.rotate(mark.angle * 180 / std::numbers::pi);
    const QPainterPath shape = chevron(mark.breadthMm, electrons);
    // A bright arrow on a bright dome needs a rim, if a thin one; a dark arrow doesn't.
    const bool thinRim = mark.look == MarkLook::OnLight && theme.dark;
    if (mark.look == MarkLook::Cased || thinRim) {
        painter.setPen(outlinePen(theme.arrowCasing, theme.arrowCasingMm * (thinRim ? kThinRimShare : 1)));
        painter.setBrush(theme.arrowCasing);
        painter.strokePath(shape, painter.pen());
    }
    painter.setPen(outlinePen(theme.arrow, kJoinMm));
    painter.setBrush(theme.arrow);
    painter.drawPath(shape);
    painter.restore();
}

void drawMarks(QPainter& painter, const Theme& theme, const std::vector<ArrowMark>& marks, bool electrons) {
    for (const ArrowMark& mark : marks) drawMark(painter, theme, mark, electrons);
}

}  // namespace tiepoint::ui
