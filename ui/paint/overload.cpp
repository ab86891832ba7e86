// Collars and flags. Pattern and words carry the message, never colour alone; nothing blinks, burns or
// bursts.

#include "ui/paint/overload.h"

#include "core/hunt/hidden_slip.h"
#include "core/meter/meter.h"
#include "core/snapshot/readings.h"
#include "ui/paint/label_places.h"
#include "ui/paint/lettering.h"
#include "ui/paint/shade.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace tiepoint::ui {
namespace {

constexpr double kCollarMm = 4.05, kCollarInnerMm = 3.15;
constexpr int kStripes = 28;
constexpr double kSlant = 0.16;           ///< radians between a stripe's inner and outer end
constexpr double kCollarRoomMm = 0.6;     ///< rims beyond a collar and a flag
constexpr double kOverhangMm = 2.5;       ///< beyond all that lies on the table, which a fitted view still shows
constexpr double kOutsideCost = 60;       ///< for each mm beyond that
constexpr double kFlagHeight = 4 / 2.25;  ///< in ems
constexpr double kFlagPadMm = 1.4, kStaffMm = 2.4, kFlagRimMm = 0.3;

void paintCollar(QPainter& painter, const Theme& theme, QPointF at) {
    const QPainterPath ring = disc(at, kCollarMm).subtracted(disc(at, kCollarInnerMm));
    painter.fillPath(ring, theme.dark ? QColor(0x0b0d10) : QColor(0xfffdf6));
    QPainterPath stripes;
    const double step = 2 * std::numbers::pi / kStripes;
    const auto on = [&](double angle, double radius) {
        return at + QPointF(std::cos(angle), std::sin(angle)) * radius;
    };
    for (int i = 0; i < kStripes; ++i) {
        const double a = i * step;
        stripes.moveTo(on(a, kCollarInnerMm));
        stripes.lineTo(on(a + kSlant, kCollarMm));
        stripes.lineTo(on(a + kSlant + step / 2, kCollarMm));
        stripes.lineTo(on(a + step / 2, kCollarInnerMm));
        stripes.closeSubpath();
    }
    painter.fillPath(stripes, theme.overload);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(outlinePen(theme.dark ? theme.overload : theme.arrow, theme.outlineMm));
    painter.drawPath(disc(at, kCollarMm));
    painter.drawPath(disc(at, kCollarInnerMm));
}

/// Where a flag may fly, and how much that is disliked for itself.
struct FlagSide {
    QPointF way;
    double dislike = 0;
};
constexpr FlagSide kFlagSides[] = {{{1, 0}, 0}, {{-1, 0}, 6}, {{0, -1}, 40}, {{0, 1}, 40}};

/// Beside the collar; above or below it slid along between `left` and `right`.
QRectF flagFrame(QPointF at, QSizeF size, QPointF way, double left, double right) {
    QRectF frame(QPointF(), size);
    const double away = kCollarMm + kStaffMm;
    frame.moveCenter(at + QPointF(way.x() * (away + size.width() / 2), way.y() * (away + size.height() / 2)));
    if (way.x() == 0) frame.moveLeft(std::max(left, std::min(frame.left(), right - size.width())));
    return frame;
}

QRectF collarOf(const Flag& flag) {
    return {flag.collarAt.x() - kCollarMm, flag.collarAt.y() - kCollarMm, 2 * kCollarMm, 2 * kCollarMm};
}

Lettering flagLettering(const WordSizes& sizes) { return {sizes.flagMm, QFont::DemiBold}; }

void paintFlag(QPainter& painter, const Theme& theme, const Flag& what, const Lettering& lettering) {
    const QPointF staff = what.collarAt + what.way * (kCollarMm - 0.2);
    const QPointF foot = what.collarAt + what.way * (kCollarMm + kStaffMm);
    const QRectF flag = what.frame;
    painter.setPen(QPen(theme.arrowCasing, 1.1, Qt::SolidLine, Qt::FlatCap));
    painter.drawLine(staff, foot);
    painter.setPen(outlinePen(theme.arrowCasing, 2 * kFlagRimMm));
    painter.setBrush(theme.overload);
    painter.drawPath(roundedBox(flag, 0.5));
    painter.setPen(QPen(theme.overload, 0.55, Qt::SolidLine, Qt::FlatCap));
    painter.drawLine(staff, foot);
    painter.fillPath(roundedBox(flag, 0.5), theme.overload);
    drawText(painter, what.words, flag.center(), lettering, theme.dark ? QColor(0x0b0d10) : QColor(Qt::white));
}

struct OverloadMark {
    QString words;
    Rect frame;  ///< from the collar's middle
    Point way;
    Lettering lettering;
    void paint(QPainter& painter, const Theme& theme) const {
        paintCollar(painter, theme, {0, 0});
        paintFlag(painter, theme, {words, toQt(frame), {0, 0}, toQt(way)}, lettering);
    }
    friend bool operator==(const OverloadMark&, const OverloadMark&) = default;
};

}  // namespace

QString overloadWords(const Figure& figure, double limit, const std::string& label) {
    const double share = figure.exact() / limit;
    const QString now = QString::fromStdString(figure.text());
    // Milliwatts beside milliwatts: a figure and its limit are only compared in one unit.
    const QString most = QString::fromStdString(besideFigure(figure, limit) + ' ' + label);
    if (share > 3) return QStringLiteral("%1: far too much for its %2").arg(now, most);
    if (share > 2.5) return QStringLiteral("%1: nearly three times its %2").arg(now, most);
    if (share > 1.9 && share < 2.1) return QStringLiteral("%1: twice its %2").arg(now, most);
    if (share > 2) return QStringLiteral("%1: more than twice its %2").arg(now, most);
    return QStringLiteral("%1: over its %2").arg(now, most);
}

std::vector<Overload> overloads(const Picture& picture) {
    std::vector<Overload> found;
    const Snapshot* live = picture.live();
    if (!live || isHunting(picture.bench())) return found;
    constexpr double kBears = 1 + 1e-6;
    for (int part = 0; part < static_cast<int>(picture.bench().parts.size()); ++part) {
        if (isMeter(*picture.bench().parts[static_cast<std::size_t>(part)].kind)) continue;  // its display says so
        const auto shares = ratingShares(*live, part);
        const auto worst =
            std::max_element(shares.begin(), shares.end(), [](const RatingShare& a, const RatingShare& b) {
                return (a.rating->maximum ? a.share() : 0) < (b.rating->maximum ? b.share() : 0);
            });
        if (worst == shares.end() || !worst->rating->maximum || !(worst->share() > kBears)) continue;
        found.push_back(
            {part, overloadWords(shownFigure(*live, part, *worst->rating), worst->limit, worst->rating->label)});
    }
    return found;
}

std::vector<Flag> placeFlags(const std::vector<Overload>& overloads, Clearance& clearance) {
    const WordGround& ground = clearance.ground();
    const Rect& sight = ground.isProjected() ? ground.stage : ground.allMm;
    const double leftMost = sight.left - kOverhangMm, rightMost = sight.right() + kOverhangMm;
    const Lettering lettering = flagLettering(ground.sizes);
    std::vector<Flag> flags;
    for (const Overload& overload : overloads) {
        const Point middle = ground.parts[static_cast<std::size_t>(overload.part)].place.pose.centre;
        Flag flag{overload.words, {}, toQt(middle)};
        const QSizeF size(textWidthMm(flag.words, lettering) + 2 * kFlagPadMm, kFlagHeight * lettering.sizeMm);
        double least = std::numeric_limits<double>::infinity();
        for (const FlagSide& side : kFlagSides) {
            const QRectF frame = flagFrame(flag.collarAt, size, side.way, leftMost, rightMost);
            const double outside = std::max({0.0, leftMost - frame.left(), frame.right() - rightMost});
            const double cost = clearance.cost(frame) + kOutsideCost * outside + side.dislike;
            if (cost < least) least = cost, flag.frame = frame, flag.way = side.way;
        }
        clearance.take(flag.frame);
        clearance.take(collarOf(flag));
        flags.push_back(std::move(flag));
    }
    return flags;
}

void addOverloads(Patches& patches, const std::vector<Overload>& overloads, Clearance& clearance) {
    for (const Flag& flag : placeFlags(overloads, clearance)) {
        const QRectF room =
            (collarOf(flag) | flag.frame).adjusted(-kCollarRoomMm, -kCollarRoomMm, kCollarRoomMm, kCollarRoomMm);
        OverloadMark mark{flag.words, fromQt(flag.frame.translated(-flag.collarAt)), fromQt(flag.way),
                          flagLettering(clearance.ground().sizes)};
        patches.push_back(movablePatch(fromQt(flag.collarAt), room.translated(-flag.collarAt), std::move(mark)));
    }
}

}  // namespace tiepoint::ui
