#include "ui/paint/finding_marks.h"

#include "core/findings/reveal.h"
#include "ui/paint/curve.h"
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

/// What a symbol and an outline say by shape and colour.
struct Gravity {
    Severity severity;
    bool placeOnly;
    friend bool operator==(const Gravity&, const Gravity&) = default;
};
Gravity gravityOf(const FindingSeen& finding) { return {finding.severity, finding.placeOnly}; }

QColor colourOf(const Theme& theme, Gravity gravity) {
    if (gravity.placeOnly) return theme.dimTextOnBench;
    return gravity.severity == Severity::Remark ? theme.accent : theme.overload;
}

// --- the symbol ---

QPainterPath shapeOf(Severity severity, QPointF c, double r) {
    QPainterPath shape;
    if (severity == Severity::Fault) {
        shape.addPolygon(QPolygonF({c + QPointF(0, -r), c + QPointF(r, 0), c + QPointF(0, r), c + QPointF(-r, 0)}));
        shape.closeSubpath();
    } else if (severity == Severity::Risk) {
        shape.addPolygon(QPolygonF({c + QPointF(0, -0.92 * r), c + QPointF(r, 0.78 * r), c + QPointF(-r, 0.78 * r)}));
        shape.closeSubpath();
    } else {
        shape.addEllipse(c, 0.86 * r, 0.86 * r);
    }
    return shape;
}

/// A cross, a bar over a dot, or a dot over a bar: told apart without colour and without reading.
QPainterPath signOf(Severity severity, QPointF c, double r) {
    QPainterPath sign;
    if (severity == Severity::Fault) {
        const double a = 0.3 * r;
        sign.moveTo(c + QPointF(-a, -a)), sign.lineTo(c + QPointF(a, a));
        sign.moveTo(c + QPointF(a, -a)), sign.lineTo(c + QPointF(-a, a));
    } else if (severity == Severity::Risk) {
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

QPainterPath outlineOfPart(const PartSeen& part) {
    return grownAbout(part.painter().body(part.scene(theme(ThemeName::Day))), kBodyAwayMm);
}

QPainterPath outlineOfJumper(const CurveSeen& jumper) {
    QPainterPathStroker stroker;
    stroker.setWidth(2 * (kBodyAwayMm + 0.5));
    stroker.setCapStyle(Qt::RoundCap);
    return stroker.createStroke(jumper.cubic().path()).simplified();
}

/// The faint outline round what a finding is about.
struct FindingPlaceMark {
    std::vector<Point> holes;
    std::vector<PartSeen> parts;
    std::vector<CurveSeen> jumpers;
    Gravity gravity;
    bool current;

    QPainterPath places() const {
        QPainterPath places;
        for (const Point hole : holes) {
            if (gravity.placeOnly)
                places.addEllipse(toQt(hole), kAreaMm, kAreaMm);
            else
                places.addPath(roundedBox({hole.x - kHoleMm / 2, hole.y - kHoleMm / 2, kHoleMm, kHoleMm}, 0.5));
        }
        for (const PartSeen& part : parts) places.addPath(outlineOfPart(part));
        for (const CurveSeen& jumper : jumpers) places.addPath(outlineOfJumper(jumper));
        return places;
    }
    void paint(QPainter& painter, const Theme& theme) const {
        const QPainterPath around = places();
        const double breadth = kOutlineMm * (theme.flat || current ? 1.5 : 1);
        painter.setBrush(Qt::NoBrush);
        painter.strokePath(around, outlinePen(faded(theme.arrowCasing, kFaint), breadth + kFindingCasingMm));
        QPen pen = outlinePen(faded(colourOf(theme, gravity), current ? 1 : kFaint), breadth);
        if (gravity.placeOnly) pen.setDashPattern({5, 3});
        painter.strokePath(around, pen);
    }
    friend bool operator==(const FindingPlaceMark&, const FindingPlaceMark&) = default;
};

/// A path of metal lit along its length.
struct MetalPathMark {
    std::vector<CurveSeen> lines;
    QPainterPath path() const {
        QPainterPath path;
        for (const CurveSeen& line : lines) path.addPath(line.cubic().path());
        return path;
    }
    void paint(QPainter& painter, const Theme& theme) const {
        painter.setBrush(Qt::NoBrush);
        painter.strokePath(path(), outlinePen(faded(theme.arrowCasing, kPathOpacity), kPathMm + 2 * kFindingCasingMm));
        painter.strokePath(path(), outlinePen(faded(theme.overload, kPathOpacity), kPathMm));
    }
    friend bool operator==(const MetalPathMark&, const MetalPathMark&) = default;
};

struct FindingSymbolMark {
    Gravity gravity;
    bool current;
    double sizeMm;
    Point anchor;  ///< from the symbol
    double roomMm;
    void paint(QPainter& painter, const Theme& theme) const;
    friend bool operator==(const FindingSymbolMark&, const FindingSymbolMark&) = default;
};

/// The jumper that joins two holes of a path, or -1: it goes straight, along a strip or through a part.
int jumperBetween(const Bench& bench, const Finding& finding, const Hole& from, const Hole& to) {
    for (const std::string& id : finding.parts) {
        const Jumper* jumper = bench.findJumper(id);
        if (!jumper) continue;
        const bool joins = (jumper->ends[0] == JumperEnd(from) && jumper->ends[1] == JumperEnd(to)) ||
                           (jumper->ends[0] == JumperEnd(to) && jumper->ends[1] == JumperEnd(from));
        if (joins) return bench.jumperIndex(id);
    }
    return -1;
}

void addMetalPath(Patches& patches, const FindingSeen& finding, const WordGround& ground) {
    MetalPathMark mark;
    for (std::size_t i = 1; i < finding.holes.size(); ++i) {
        const auto &from = finding.holes[i - 1], &to = finding.holes[i];
        if (!from || !to) continue;
        const int jumper = finding.ways[i - 1];
        mark.lines.push_back(jumper >= 0 ? ground.jumpers[static_cast<std::size_t>(jumper)]
                                         : CurveSeen{{*from, *from, *to, *to}});
    }
    if (mark.lines.empty()) return;
    const double room = kPathMm + kFindingCasingMm;
    const QRectF mm = mark.path().boundingRect().adjusted(-room, -room, room, room);
    patches.push_back(fixedPatch(mm, std::move(mark)));
}

/// What the symbol stands beside, and how much of it the symbol leaves free.
struct Anchor {
    QPointF at;
    double roomMm = kAnchorRoomMm;
};

Anchor bodyOf(const PartSeen& part) {
    const Outline& body = part.place.pose.body;
    return {toQt(body.centre), std::max(body.halfLength, body.halfWidth) + kBodyAwayMm + kFindingCasingMm};
}

std::optional<Anchor> anchorOf(const FindingSeen& finding, const WordGround& ground) {
    if (finding.alongMetal && !finding.holes.empty()) {
        if (const auto& at = finding.holes[finding.holes.size() / 2]) return Anchor{toQt(*at)};
    }
    const auto partAt = [&](int index) -> const PartSeen& { return ground.parts[static_cast<std::size_t>(index)]; };
    for (const FindingSeen::Thing thing : finding.things) {
        if (thing.jumper) {
            const Polyline line = Polyline::of(ground.jumpers[static_cast<std::size_t>(thing.index)].cubic().path());
            return Anchor{line.at(line.lengthMm() / 2).at};
        }
        if (standsOnBoard(partAt(thing.index).part)) return bodyOf(partAt(thing.index));
    }
    for (const auto& hole : finding.holes) {
        if (hole) return Anchor{toQt(*hole)};
    }
    for (const FindingSeen::Thing thing : finding.things) {
        if (!thing.jumper) return bodyOf(partAt(thing.index));
    }
    return std::nullopt;
}

void paintSymbol(QPainter& painter, const Theme& theme, Gravity gravity, QPointF centre, double size) {
    const double r = size / 2;
    const QColor colour = colourOf(theme, gravity);
    const QPainterPath shape = shapeOf(gravity.severity, centre, r);
    const bool filled = gravity.severity == Severity::Fault;
    painter.setPen(QPen(colour, 0.16 * r, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.setBrush(filled ? colour : theme.card);
    painter.drawPath(shape);
    painter.setBrush(Qt::NoBrush);
    if (gravity.placeOnly) return;
    painter.strokePath(signOf(gravity.severity, centre, r),
                       QPen(filled ? theme.card : colour, 0.22 * r, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
}

void FindingSymbolMark::paint(QPainter& painter, const Theme& theme) const {
    const QPointF way = toQt(anchor);
    const double length = std::hypot(way.x(), way.y());
    if (length > sizeMm / 2 + roomMm + kNearMm) {  // far away: a thread leads to what it belongs to
        const QPointF end = way - way * (roomMm / length);
        painter.setPen(outlinePen(theme.arrowCasing, kOutlineMm + kFindingCasingMm));
        painter.drawLine(QPointF(0, 0), end);
        painter.setPen(outlinePen(colourOf(theme, gravity), kOutlineMm));
        painter.drawLine(QPointF(0, 0), end);
    }
    const double radius = sizeMm / 2 + kFindingCasingMm;
    painter.setPen(Qt::NoPen);
    painter.setBrush(faded(theme.arrowCasing, 0.85));
    painter.drawEllipse(QPointF(0, 0), radius, radius);
    if (current) {
        painter.setBrush(Qt::NoBrush);
        painter.setPen(outlinePen(colourOf(theme, gravity), kOutlineMm * 1.4));
        painter.drawEllipse(QPointF(0, 0), radius, radius);
    }
    paintSymbol(painter, theme, gravity, {0, 0}, sizeMm * 0.92);
}

}  // namespace

std::vector<FindingSeen> findingsSeen(const Picture& picture) {
    std::vector<FindingSeen> findings;
    if (!picture.findings) return findings;
    const Bench& bench = picture.bench();
    for (std::size_t i = 0; i < picture.findings->size(); ++i) {
        const Finding& finding = (*picture.findings)[i];
        FindingSeen seen{finding.severity,
                         isPlaceOnly(finding),
                         picture.marks.finding == static_cast<int>(i),
                         finding.alongMetal,
                         {},
                         {},
                         {}};
        for (const Hole& hole : finding.holes)
            seen.holes.push_back(holeMm(bench, hole) ? std::optional(picture.seenAt(hole)) : std::nullopt);
        for (const std::string& id : finding.parts) {
            if (const int part = bench.partIndex(id); part >= 0) seen.things.push_back({false, part});
            if (const int jumper = bench.jumperIndex(id); jumper >= 0) seen.things.push_back({true, jumper});
        }
        for (std::size_t k = 1; finding.alongMetal && k < finding.holes.size(); ++k)
            seen.ways.push_back(jumperBetween(bench, finding, finding.holes[k - 1], finding.holes[k]));
        findings.push_back(std::move(seen));
    }
    return findings;
}

std::vector<FindingMark> placeFindings(const std::vector<FindingSeen>& findings, Clearance& clearance) {
    std::vector<FindingMark> marks;
    const double size = kMarkPerId * clearance.ground().sizes.idMm;
    constexpr int kRings = 8, kWays = 16;
    constexpr double kRingStepMm = 1.3, kPerMm = 0.35;
    for (int i = 0; i < static_cast<int>(findings.size()); ++i) {
        const auto anchor = anchorOf(findings[static_cast<std::size_t>(i)], clearance.ground());
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

void addFindingPlaces(Patches& patches, const std::vector<FindingSeen>& findings, const WordGround& ground) {
    for (const FindingSeen& finding : findings) {
        if (finding.alongMetal) addMetalPath(patches, finding, ground);
        FindingPlaceMark mark{{}, {}, {}, gravityOf(finding), finding.current};
        for (const auto& hole : finding.holes) {
            if (hole) mark.holes.push_back(*hole);
        }
        for (const FindingSeen::Thing thing : finding.things) {
            if (finding.alongMetal) break;
            const auto i = static_cast<std::size_t>(thing.index);
            if (thing.jumper)
                mark.jumpers.push_back(ground.jumpers[i]);
            else
                mark.parts.push_back(ground.parts[i]);
        }
        const QPainterPath places = mark.places();
        if (places.isEmpty()) continue;
        const double room = kOutlineMm + 2 * kFindingCasingMm;
        patches.push_back(fixedPatch(places.boundingRect().adjusted(-room, -room, room, room), std::move(mark)));
    }
}

void paintFindingSymbol(QPainter& painter, const Theme& theme, const Finding& finding, QPointF centre, double size) {
    paintSymbol(painter, theme, {finding.severity, isPlaceOnly(finding)}, centre, size);
}

void addFindingMarks(Patches& patches, const std::vector<FindingSeen>& findings,
                     const std::vector<FindingMark>& marks) {
    for (const FindingMark& mark : marks) {
        const FindingSeen& finding = findings[static_cast<std::size_t>(mark.finding)];
        const QPointF at = mark.frame.center();
        const QRectF room = (mark.frame | QRectF(mark.anchor, QSizeF(0.01, 0.01))).adjusted(-1, -1, 1, 1);
        patches.push_back(movablePatch(fromQt(at), room.translated(-at),
                                       FindingSymbolMark{gravityOf(finding), finding.current, mark.frame.width(),
                                                         fromQt(mark.anchor - at), mark.roomMm}));
    }
}

}  // namespace tiepoint::ui
