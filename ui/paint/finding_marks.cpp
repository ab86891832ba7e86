#include "ui/paint/finding_marks.h"

#include "core/findings/reveal.h"
#include "ui/paint/bench_painter.h"
#include "ui/paint/curve.h"
#include "ui/paint/part_scenes.h"
#include "ui/paint/shade.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace tiepoint::ui {
namespace {

constexpr double kMarkPerId = 3.1 / 1.7;  ///< breadth of a symbol, in ems of an id
constexpr double kAnchorRoomMm = 1.6;     ///< a symbol leaves the hole that it belongs to free
constexpr double kNearMm = 0.5;           ///< so near that no thread is needed
constexpr double kHoleMm = 2.1, kOutlineMm = 0.22, kFindingCasingMm = 0.34, kBodyAwayMm = 0.55;
constexpr double kFaint = 0.6;
constexpr double kAreaMm = 5.6;  ///< about a place to look at
constexpr double kPathMm = 1.25, kPathOpacity = 0.45;

QColor colourOf(const Theme& theme, const Finding& finding) {
    if (isPlaceOnly(finding)) return theme.dimTextOnBench;
    return finding.severity == Severity::Remark ? theme.accent : theme.overload;
}

std::optional<QPointF> seen(const Picture& picture, const Hole& hole) {
    if (!holeMm(picture.bench(), hole)) return std::nullopt;
    return toQt(picture.seenAt(hole));
}

bool isCurrent(const Picture& picture, std::size_t finding) {
    return picture.marks.finding == static_cast<int>(finding);
}

// --- the symbol ---

QPainterPath shapeOf(const Finding& finding, QPointF c, double r) {
    QPainterPath shape;
    if (finding.severity == Severity::Fault) {
        shape.addPolygon(QPolygonF({c + QPointF(0, -r), c + QPointF(r, 0), c + QPointF(0, r), c + QPointF(-r, 0)}));
        shape.closeSubpath();
    } else if (finding.severity == Severity::Risk) {
        shape.addPolygon(QPolygonF({c + QPointF(0, -0.92 * r), c + QPointF(r, 0.78 * r), c + QPointF(-r, 0.78 * r)}));
        shape.closeSubpath();
    } else {
        shape.addEllipse(c, 0.86 * r, 0.86 * r);
    }
    return shape;
}

/// A cross, a bar over a dot, or a dot over a bar: told apart without colour and without reading.
QPainterPath signOf(const Finding& finding, QPointF c, double r) {
    QPainterPath sign;
    if (finding.severity == Severity::Fault) {
        const double a = 0.3 * r;
        sign.moveTo(c + QPointF(-a, -a)), sign.lineTo(c + QPointF(a, a));
        sign.moveTo(c + QPointF(a, -a)), sign.lineTo(c + QPointF(-a, a));
    } else if (finding.severity == Severity::Risk) {
        sign.moveTo(c + QPointF(0, -0.32 * r)), sign.lineTo(c + QPointF(0, 0.2 * r));
        sign.moveTo(c + QPointF(0, 0.52 * r)), sign.lineTo(c + QPointF(0, 0.54 * r));
    } else {
        sign.moveTo(c + QPointF(0, -0.44 * r)), sign.lineTo(c + QPointF(0, -0.42 * r));
        sign.moveTo(c + QPointF(0, -0.08 * r)), sign.lineTo(c + QPointF(0, 0.44 * r));
    }
    return sign;
}

// --- places ---

/// A shape grown by a breadth on all sides. Shapes are joined in small units: in millimetres their curves would become corners.
QPainterPath grownAbout(const QPainterPath& shape, double byMm) {
    constexpr double kUnitsPerMm = 50;
    const QPainterPath fine = QTransform::fromScale(kUnitsPerMm, kUnitsPerMm).map(shape);
    QPainterPathStroker stroker;
    stroker.setWidth(2 * byMm * kUnitsPerMm);
    stroker.setJoinStyle(Qt::RoundJoin);
    return QTransform::fromScale(1 / kUnitsPerMm, 1 / kUnitsPerMm)
        .map(stroker.createStroke(fine).united(fine).simplified());
}

QPainterPath outlineOf(const Picture& picture, const std::string& id) {
    if (const int part = picture.bench().partIndex(id); part >= 0) {
        const PartScene scene = sceneOf(picture, part);
        return grownAbout(findPackagePainter(scene.part.kind->package->name)->body(scene), kBodyAwayMm);
    }
    if (const int jumper = picture.bench().jumperIndex(id); jumper >= 0) {
        QPainterPathStroker stroker;
        stroker.setWidth(2 * (kBodyAwayMm + 0.5));
        stroker.setCapStyle(Qt::RoundCap);
        return stroker.createStroke(jumperLine(picture, jumper)).simplified();
    }
    return {};
}

QPainterPath placesOf(const Picture& picture, const Finding& finding) {
    QPainterPath places;
    for (const Hole& hole : finding.holes) {
        const auto at = seen(picture, hole);
        if (!at) continue;
        if (isPlaceOnly(finding))
            places.addEllipse(*at, kAreaMm, kAreaMm);
        else
            places.addPath(roundedBox({at->x() - kHoleMm / 2, at->y() - kHoleMm / 2, kHoleMm, kHoleMm}, 0.5));
    }
    if (!finding.alongMetal) {
        for (const std::string& id : finding.parts) places.addPath(outlineOf(picture, id));
    }
    return places;
}

/// Between two holes of a path that are not one strip: along the jumper that joins them, else straight, through a part.
QPainterPath between(const Picture& picture, const Finding& finding, const Hole& from, const Hole& to) {
    const Layout& layout = *picture.layout;
    const int a = layout.holeIndex(from), b = layout.holeIndex(to);
    QPainterPath line;
    if (a < 0 || b < 0) return line;
    for (const std::string& id : finding.parts) {
        const Jumper* jumper = picture.bench().findJumper(id);
        if (!jumper) continue;
        const bool joins = (jumper->ends[0] == JumperEnd(from) && jumper->ends[1] == JumperEnd(to)) ||
                           (jumper->ends[0] == JumperEnd(to) && jumper->ends[1] == JumperEnd(from));
        if (joins) return jumperLine(picture, picture.bench().jumperIndex(id));
    }
    line.moveTo(toQt(picture.seenAt(from)));
    line.lineTo(toQt(picture.seenAt(to)));
    return line;
}

QPainterPath pathOf(const Picture& picture, const Finding& finding) {
    QPainterPath path;
    for (std::size_t i = 1; i < finding.holes.size(); ++i)
        path.addPath(between(picture, finding, finding.holes[i - 1], finding.holes[i]));
    return path;
}

void addMetalPath(Patches& patches, const Picture& picture, const Finding& finding) {
    const QPainterPath path = pathOf(picture, finding);
    if (path.isEmpty()) return;
    const double room = kPathMm + kFindingCasingMm;
    patches.push_back({path.boundingRect().adjusted(-room, -room, room, room),
                       PatchLook() << "metal path" << finding.text, [&picture, path](QPainter& painter) {
                           const Theme& theme = *picture.theme;
                           painter.setBrush(Qt::NoBrush);
                           painter.strokePath(path, outlinePen(faded(theme.arrowCasing, kPathOpacity),
                                                               kPathMm + 2 * kFindingCasingMm));
                           painter.strokePath(path, outlinePen(faded(theme.overload, kPathOpacity), kPathMm));
                       }});
}

/// What the symbol stands beside, and how much of it the symbol leaves free.
struct Anchor {
    QPointF at;
    double roomMm = kAnchorRoomMm;
};

Anchor bodyOf(const Picture& picture, int part) {
    const Outline& body = sceneOf(picture, part).place.pose.body;
    return {toQt(body.centre), std::max(body.halfLength, body.halfWidth) + kBodyAwayMm + kFindingCasingMm};
}

std::optional<Anchor> anchorOf(const Picture& picture, const Finding& finding) {
    if (finding.alongMetal && !finding.holes.empty()) {
        if (const auto at = seen(picture, finding.holes[finding.holes.size() / 2])) return Anchor{*at};
    }
    for (const std::string& id : finding.parts) {
        if (const int jumper = picture.bench().jumperIndex(id); jumper >= 0) {
            const Polyline line = Polyline::of(jumperLine(picture, jumper));
            return Anchor{line.at(line.lengthMm() / 2).at};
        }
        const int part = picture.bench().partIndex(id);
        if (part >= 0 && standsOnBoard(picture.bench().parts[static_cast<std::size_t>(part)]))
            return bodyOf(picture, part);
    }
    for (const Hole& hole : finding.holes) {
        if (const auto at = seen(picture, hole)) return Anchor{*at};
    }
    for (const std::string& id : finding.parts) {
        if (const int part = picture.bench().partIndex(id); part >= 0) return bodyOf(picture, part);
    }
    return std::nullopt;
}

}  // namespace

std::vector<FindingMark> placeFindings(const Picture& picture, Clearance& clearance) {
    std::vector<FindingMark> marks;
    if (!picture.findings) return marks;
    const double size = kMarkPerId * picture.sizes.idMm;
    constexpr int kRings = 8, kWays = 16;
    constexpr double kRingStepMm = 1.3, kPerMm = 0.35;
    for (int i = 0; i < static_cast<int>(picture.findings->size()); ++i) {
        const auto anchor = anchorOf(picture, (*picture.findings)[static_cast<std::size_t>(i)]);
        if (!anchor) continue;
        QRectF best;
        double least = std::numeric_limits<double>::infinity();
        for (int ring = 0; ring < kRings; ++ring) {
            for (int way = 0; way < kWays; ++way) {
                const double angle = 2 * std::numbers::pi * way / kWays - std::numbers::pi / 4;
                const double away = anchor->roomMm + size / 2 + ring * kRingStepMm;
                const QPointF at = anchor->at + away * QPointF(std::cos(angle), std::sin(angle));
                const QRectF frame(at.x() - size / 2, at.y() - size / 2, size, size);
                const double cost = clearance.cost(frame) + kPerMm * away;
                if (cost < least) least = cost, best = frame;
            }
        }
        clearance.take(best);
        marks.push_back({i, best, anchor->at, anchor->roomMm});
    }
    return marks;
}

void addFindingPlaces(Patches& patches, const Picture& picture) {
    if (!picture.findings) return;
    for (std::size_t i = 0; i < picture.findings->size(); ++i) {
        const Finding& finding = (*picture.findings)[i];
        if (finding.alongMetal) addMetalPath(patches, picture, finding);
        const QPainterPath places = placesOf(picture, finding);
        if (places.isEmpty()) continue;
        const bool current = isCurrent(picture, i), dashed = isPlaceOnly(finding);
        const QColor colour = faded(colourOf(*picture.theme, finding), current ? 1 : kFaint);
        const double room = kOutlineMm + 2 * kFindingCasingMm;
        patches.push_back({places.boundingRect().adjusted(-room, -room, room, room),
                           PatchLook() << "finding" << finding.rule << finding.text << current << colour,
                           [&picture, places, colour, current, dashed](QPainter& painter) {
                               const double breadth = kOutlineMm * (picture.theme->flat || current ? 1.5 : 1);
                               painter.setBrush(Qt::NoBrush);
                               painter.strokePath(places, outlinePen(faded(picture.theme->arrowCasing, kFaint),
                                                                     breadth + kFindingCasingMm));
                               QPen pen = outlinePen(colour, breadth);
                               if (dashed) pen.setDashPattern({5, 3});
                               painter.strokePath(places, pen);
                           }});
    }
}

void paintFindingSymbol(QPainter& painter, const Theme& theme, const Finding& finding, QPointF centre, double size) {
    const double r = size / 2;
    const QColor colour = colourOf(theme, finding);
    const QPainterPath shape = shapeOf(finding, centre, r);
    const bool filled = finding.severity == Severity::Fault;
    painter.setPen(QPen(colour, 0.16 * r, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.setBrush(filled ? colour : theme.card);
    painter.drawPath(shape);
    painter.setBrush(Qt::NoBrush);
    if (isPlaceOnly(finding)) return;
    painter.strokePath(signOf(finding, centre, r),
                       QPen(filled ? theme.card : colour, 0.22 * r, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
}

void addFindingMarks(Patches& patches, const Picture& picture, const std::vector<FindingMark>& marks) {
    for (const FindingMark& mark : marks) {
        const Finding& finding = (*picture.findings)[static_cast<std::size_t>(mark.finding)];
        const bool current = picture.marks.finding == mark.finding;
        const double size = mark.frame.width();
        const QRectF room = (mark.frame | QRectF(mark.anchor, QSizeF(0.01, 0.01))).adjusted(-1, -1, 1, 1);
        patches.push_back({room,
                           PatchLook() << "finding mark" << finding.rule << finding.severity << current
                                       << mark.frame.center() << mark.anchor,
                           [&picture, finding, mark, size, current](QPainter& painter) {
                               const Theme& theme = *picture.theme;
                               const QPointF at = mark.frame.center();
                               const QPointF way = mark.anchor - at;
                               const double length = std::hypot(way.x(), way.y());
                               if (length > size / 2 + mark.roomMm +
                                                kNearMm) {  // far away: a thread leads to what it belongs to
                                   const QPointF end = mark.anchor - way * (mark.roomMm / length);
                                   painter.setPen(outlinePen(theme.arrowCasing, kOutlineMm + kFindingCasingMm));
                                   painter.drawLine(at, end);
                                   painter.setPen(outlinePen(colourOf(theme, finding), kOutlineMm));
                                   painter.drawLine(at, end);
                               }
                               painter.setPen(Qt::NoPen);
                               painter.setBrush(faded(theme.arrowCasing, 0.85));
                               painter.drawEllipse(at, size / 2 + kFindingCasingMm, size / 2 + kFindingCasingMm);
                               if (current) {
                                   painter.setBrush(Qt::NoBrush);
                                   painter.setPen(outlinePen(colourOf(theme, finding), kOutlineMm * 1.4));
                                   painter.drawEllipse(at, size / 2 + kFindingCasingMm, size / 2 + kFindingCasingMm);
                               }
                               paintFindingSymbol(painter, theme, finding, at, size * 0.92);
                           }});
    }
}

}  // namespace tiepoint::ui
