// Marks of the hand: selection, holes that leads would go to, what is being carried or drawn, and words
// beside the pointer.

#include "core/bench/jumper_routes.h"
#include "core/edit/holes.h"
#include "core/edit/placement.h"
#include "core/hunt/hidden_slip.h"
#include "ui/paint/bench_painter.h"
#include "ui/paint/built_marks.h"
#include "ui/paint/carried_group.h"
#include "ui/paint/guide_marks.h"
#include "ui/paint/hop_marks.h"
#include "ui/paint/label_painter.h"
#include "ui/paint/label_places.h"
#include "ui/paint/live_layers.h"
#include "ui/paint/mend_painter.h"
#include "ui/paint/net_marks.h"
#include "ui/paint/note_painter.h"
#include "ui/paint/packages/package_painter.h"
#include "ui/paint/part_scenes.h"
#include "ui/paint/part_seen.h"
#include "ui/paint/rest_patch.h"
#include "ui/paint/selection_marks.h"
#include "ui/paint/shade.h"
#include "ui/paint/wire_painter.h"

#include <algorithm>
#include <cmath>

namespace tiepoint::ui {
namespace {

constexpr double kTargetMm = 2.2, kTargetBreadthMm = 0.34;
constexpr double kSwollenMm = 1.5;  ///< a hole that waits for a lead, half as wide again as the others
constexpr double kCursorMm = 2.5, kCursorTickMm = 0.55, kCursorBreadthMm = 0.5;

Lettering wordsOf(const Picture& picture) { return {picture.sizes.wordsMm, QFont::Medium}; }

constexpr double kBandLineMm = 0.25;
constexpr float kBandOpacity = 0.12F;

QRectF grown(const QRectF& rect, double by) { return rect.adjusted(-by, -by, by, by); }

constexpr double kLitBreadthMm = 0.5, kLitAwayMm = 0.7, kLitWireMm = 1.2;

/// A line all round a part or along a jumper, in the colour of what is pointed at.
struct LitMark {
    Rect body;       ///< of a part; empty:
    CurveSeen wire;  ///< a jumper
    QPainterPath around() const {
        if (body.width > 0) return roundedBox(grown(toQt(body), kLitAwayMm), kLitAwayMm);
        QPainterPathStroker stroker;
        stroker.setWidth(2 * kLitWireMm);
        stroker.setCapStyle(Qt::RoundCap);
        return stroker.createStroke(wire.cubic().path()).simplified();
    }
    void paint(QPainter& painter, const Theme& theme) const {
        painter.setBrush(Qt::NoBrush);
        painter.strokePath(around(), outlinePen(theme.arrowCasing, kLitBreadthMm + 0.5));
        painter.strokePath(around(), outlinePen(theme.hover, kLitBreadthMm));
    }
    friend bool operator==(const LitMark&, const LitMark&) = default;
};

void addLit(Patches& patches, const Picture& picture) {
    const std::string& id = picture.marks.lit;
    LitMark mark;
    if (const int part = picture.bench().partIndex(id); part >= 0) {
        mark.body = fromQt(bodyFrame(picture, part));
    } else if (const int jumper = picture.bench().jumperIndex(id); jumper >= 0) {
        mark.wire = jumperSeen(picture, jumper);
    } else {
        return;
    }
    patches.push_back(fixedPatch(grown(mark.around().boundingRect(), kLitBreadthMm), mark));
}

/// A hole that waits for a lead swells, in a ring; a refused one is crossed, so that colour doesn't say it alone. Rings are fills within
/// fills: a group of fifty things has hundreds of targets, and lines cost much more.
struct TargetMark {
    bool refused;
    void paint(QPainter& painter, const Theme& theme) const {
        const QRectF ring(-kTargetMm / 2, -kTargetMm / 2, kTargetMm, kTargetMm);
        const QColor colour = refused ? theme.overload : theme.accent;
        const auto fill = [&painter](const QRectF& box, double corner, const QColor& with) {
            painter.fillPath(roundedBox(box, corner), with);
        };
        const double half = kTargetBreadthMm / 2;
        fill(grown(ring, half + 0.2), 0.4 + half + 0.2, theme.arrowCasing);
        fill(grown(ring, half), 0.4 + half, colour);
        fill(grown(ring, -half), 0.4 - half, blend(theme.boardTop, colour, 0.25));
        fill(QRectF(-kSwollenMm / 2, -kSwollenMm / 2, kSwollenMm, kSwollenMm), 0.25, theme.hole);
        if (!refused) return;
        painter.setPen(outlinePen(colour, kTargetBreadthMm));
        painter.drawLine(ring.topLeft() + QPointF(0.4, 0.4), ring.bottomRight() - QPointF(0.4, 0.4));
        painter.drawLine(ring.topRight() + QPointF(-0.4, 0.4), ring.bottomLeft() + QPointF(0.4, -0.4));
    }
    friend bool operator==(const TargetMark&, const TargetMark&) = default;
};

void addTargets(Patches& patches, const Picture& picture) {
    constexpr double kReachMm = kTargetMm / 2 + kTargetBreadthMm;
    for (const Hole& hole : picture.marks.targets) {
        if (!holeMm(picture.bench(), hole)) continue;
        patches.push_back(movablePatch(picture.seenAt(hole), {-kReachMm, -kReachMm, 2 * kReachMm, 2 * kReachMm},
                                       TargetMark{picture.marks.refused}));
    }
}

double handOpacity(const Marks& marks) { return marks.refused ? kRefusedOpacity : kCarriedOpacity; }

void addCarriedPart(Patches& patches, const Picture& picture) {
    if (!picture.marks.carried) return;
    const Part& part = *picture.marks.carried;
    if (std::none_of(part.leads.begin(), part.leads.end(), [](const auto& lead) { return lead.has_value(); })) return;
    if (!findPackagePainter(part.kind->package->name)) return;
    Picture alone;
    auto bench = std::make_shared<Bench>();
    bench->boards = picture.bench().boards;
    bench->parts = {part};
    alone.layout = buildLayout(std::move(bench));
    alone.theme = picture.theme;
    alone.arrangeTable();
    patches.push_back(restPatch(alone, 0));
    patches.back().opacity = handOpacity(picture.marks);
}

struct DrawnJumperMark {
    CurveSeen line;
    int colour;
    bool flat;
    void paint(QPainter& painter, const Theme& theme) const {
        const Cubic wire = line.cubic();
        paintWire(painter, theme, wire, jumperLook(theme, colour, wire.lengthMm(), flat));
    }
    friend bool operator==(const DrawnJumperMark&, const DrawnJumperMark&) = default;
};

void addDrawnJumper(Patches& patches, const Picture& picture) {
    const Marks& marks = picture.marks;
    std::optional<std::pair<Point, Point>> ends = marks.drawnFree;
    int colour = marks.drawnColour;
    bool flat = false;
    if (marks.drawn) {
        ends = {endMm(picture.bench(), *picture.table, marks.drawn->ends[0]),
                endMm(picture.bench(), *picture.table, marks.drawn->ends[1])};
        colour = marks.drawn->colour;
        flat = marks.drawn->flat;
    }
    if (!ends || distance(ends->first, ends->second) < 0.1) return;
    const Arc arc = marks.drawn ? routeJumper(picture.bench(), *picture.table, *marks.drawn)
                                : Arc{usualBow(ends->first, ends->second, middleYOf(picture)), 0};
    const Cubic wire = jumperCubic(ends->first, ends->second, arc);
    patches.push_back(fixedPatch(wireBounds(wire), DrawnJumperMark{CurveSeen::of(wire), colour, flat}));
    patches.back().opacity = handOpacity(marks);
}

/// A square about the cursor's hole with a tick on each side: larger than a target and never mistaken for one.
struct CursorMark {
    QPainterPath frame() const {
        const double half = kCursorMm / 2;
        QPainterPath frame = roundedBox({-half, -half, kCursorMm, kCursorMm}, 0.5);
        for (const QPointF side : {QPointF(1, 0), QPointF(-1, 0), QPointF(0, 1), QPointF(0, -1)}) {
            frame.moveTo(side * half);
            frame.lineTo(side * (half + kCursorTickMm));
        }
        return frame;
    }
    void paint(QPainter& painter, const Theme& theme) const {
        painter.setBrush(Qt::NoBrush);
        painter.strokePath(frame(), outlinePen(theme.arrowCasing, kCursorBreadthMm + 0.5));
        painter.strokePath(frame(), outlinePen(theme.accent, kCursorBreadthMm));
    }
    friend bool operator==(const CursorMark&, const CursorMark&) = default;
};

void addCursor(Patches& patches, const Picture& picture) {
    if (!picture.marks.cursor || !holeMm(picture.bench(), *picture.marks.cursor)) return;
    const CursorMark mark;
    patches.push_back(movablePatch(picture.seenAt(*picture.marks.cursor),
                                   grown(mark.frame().boundingRect(), kCursorBreadthMm), mark));
}

/// How much of parts and of what is pinned a frame would hide, mm².
double hiddenBy(const Picture& picture, const QRectF& frame) {
    double hidden = 0;
    const auto add = [&](const QRectF& thing) {
        const QRectF shared = thing & frame;
        hidden += shared.width() * shared.height();
    };
    for (int part = 0; part < static_cast<int>(picture.bench().parts.size()); ++part) add(bodyFrame(picture, part));
    if (picture.pinned)
        for (const PinnedTag& tag : *picture.pinned) add(tag.frame);
    return hidden;
}

/// A frame beside a point, or its mirror image to the left, below or both, if that hides less.
QRectF leastHiding(const Picture& picture, QPointF at, const QRectF& frame) {
    constexpr double kWorthMm2 = 1;  ///< so that a tag doesn't jump about for nothing
    const double left = 2 * at.x() - frame.right(), below = 2 * at.y() - frame.bottom();
    QRectF best = frame;
    double least = hiddenBy(picture, frame);
    for (const QPointF corner : {QPointF(left, frame.top()), QPointF(frame.left(), below), QPointF(left, below)}) {
        if (least < kWorthMm2) break;
        const QRectF mirrored(corner, frame.size());
        if (const double hidden = hiddenBy(picture, mirrored); hidden < least - kWorthMm2)
            best = mirrored, least = hidden;
    }
    return best;
}

/// Moved to where it is seen whole.
QRectF movedInSight(const Picture& picture, const QRectF& frame) {
    if (picture.seenMm.isEmpty()) return frame;
    constexpr double kFromEdgeMm = 0.6;
    const QRectF sight = grown(picture.seenMm, -kFromEdgeMm);
    return {std::max(sight.left(), std::min(frame.left(), sight.right() - frame.width())),
            std::max(sight.top(), std::min(frame.top(), sight.bottom() - frame.height())), frame.width(),
            frame.height()};
}

void addTag(Patches& patches, const Picture& picture, Point at, const QString& text, TagEdge edge) {
    Lettering lettering = wordsOf(picture);
    QRectF frame = tagBeside(toQt(at), text, lettering);
    constexpr double kOfSight = 0.88;  // a tag's margins keep their breadth
    if (const double most = kOfSight * picture.seenMm.width(); most > 0 && frame.width() > most) {
        lettering.sizeMm *= most / frame.width();  // so near that the words would be broader than the window
        frame = tagBeside(toQt(at), text, lettering);
    }
    frame = movedInSight(picture, leastHiding(picture, toQt(at), movedInSight(picture, frame)));
    patches.push_back(tagPatch(frame, text, lettering, edge));
}

/// The hole there, if the place is that of one.
QString hoveredHole(const Picture& picture) {
    constexpr double kOnHoleMm = 0.1;
    const auto hole = nearestHole(picture.bench(), picture.table->seen(picture.marks.hoverAt), kOnHoleMm);
    return hole ? QString::fromStdString(holeName(picture.bench(), *hole)) : QString();
}

/// The tag of the net that is pointed at, among those beside the boards.
void addPointedTag(Patches& patches, const Picture& picture) {
    if (!picture.netTags) return;
    for (const NetTag& tag : *picture.netTags) {
        if (tag.net == picture.marks.hoverNet)
            patches.push_back(tagPatch(toQt(tag.frame), tag.text, readingLettering(picture.sizes),
                                       tag.isFloating ? TagEdge::PointedFloating : TagEdge::Hover));
    }
}

void addHoverTag(Patches& patches, const Picture& picture) {
    if (picture.marks.hoverNet < 0) return;
    addPointedTag(patches, picture);
    if (const QString words = hoverWords(picture); !words.isEmpty())
        addTag(patches, picture, picture.marks.hoverAt, words, TagEdge::Hover);
}

void addSaid(Patches& patches, const Picture& picture) {
    if (picture.marks.say.empty()) return;
    addTag(patches, picture, picture.marks.sayAt, QString::fromStdString(picture.marks.say),
           picture.marks.refused ? TagEdge::Overload : TagEdge::Accent);
}

struct BandMark {
    Rect band;
    void paint(QPainter& painter, const Theme& theme) const {
        QColor fill = theme.accent;
        fill.setAlphaF(kBandOpacity);
        painter.setBrush(fill);
        painter.setPen(QPen(theme.accent, kBandLineMm));
        painter.drawRect(toQt(band));
    }
    friend bool operator==(const BandMark&, const BandMark&) = default;
};

void addBand(Patches& patches, const Picture& picture) {
    if (!picture.marks.band) return;
    const QRectF& band = *picture.marks.band;
    patches.push_back(fixedPatch(grown(band, kBandLineMm), BandMark{fromQt(band)}));
}

}  // namespace

QString hoverWords(const Picture& picture) {
    if (picture.marks.hoverNet < 0) return {};
    QString hole = hoveredHole(picture);
    const Snapshot* live = picture.live();
    if (!picture.layout->netUsed[static_cast<std::size_t>(picture.marks.hoverNet)] || !live) return hole;
    if (isHunting(picture.bench())) return hole;  // there only a meter tells
    const Figure volt = live->shown().volt(picture.marks.hoverNet);
    const QString volts = volt.isKnown() ? QString::fromStdString(volt.text()) + QStringLiteral(" above minus")
                                         : QStringLiteral("joined to nothing");
    return hole.isEmpty() ? volts : hole + QStringLiteral(": ") + volts;
}

void addHandMarks(Patches& patches, const Picture& picture, const Patches& mended, const Patches& group) {
    addNotes(patches, picture);
    if (const Note* note = picture.bench().findNote(picture.marks.hoverPart))
        addUnfoldedNote(patches, picture, static_cast<int>(note - picture.bench().notes.data()));
    addLit(patches, picture);
    addSelection(patches, picture);
    addTie(patches, picture);
    patches.insert(patches.end(), mended.begin(), mended.end());
    addCarriedPart(patches, picture);
    patches.insert(patches.end(), group.begin(), group.end());
    addDrawnJumper(patches, picture);
    addProbe(patches, picture);
    addTargets(patches, picture);
    addHopMarks(patches, picture);
    addGuideMarks(patches, picture);
    addCursor(patches, picture);
    addHoverTag(patches, picture);
    addSaid(patches, picture);
    addBand(patches, picture);
}

void addHandMarks(Patches& patches, const Picture& picture) {
    Patches mended, group;
    addMended(mended, mendInput(picture));
    addBuilt(mended, builtInput(picture));
    addCarriedGroup(group, groupInput(picture));
    addHandMarks(patches, picture, mended, group);
}

}  // namespace tiepoint::ui
