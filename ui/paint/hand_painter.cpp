// Marks of the hand: selection, holes that leads would go to, what is being carried or drawn, and words
// beside the pointer.

#include "core/bench/jumper_routes.h"
#include "ui/paint/bench_painter.h"
#include "ui/paint/carried_group.h"
#include "ui/paint/guide_marks.h"
#include "ui/paint/label_painter.h"
#include "ui/paint/live_layers.h"
#include "ui/paint/mend_painter.h"
#include "ui/paint/net_marks.h"
#include "ui/paint/note_painter.h"
#include "ui/paint/packages/package_painter.h"
#include "ui/paint/part_scenes.h"
#include "ui/paint/shade.h"
#include "ui/paint/wire_painter.h"

#include <algorithm>
#include <cmath>

namespace tiepoint::ui {
namespace {

constexpr double kBracketMm = 1.3, kBracketBreadthMm = 0.42, kBracketAwayMm = 0.7;
constexpr double kTargetMm = 2.2, kTargetBreadthMm = 0.34;
constexpr double kSwollenMm = 1.5;  ///< a hole that waits for a lead, half as wide again as the others
constexpr double kCursorMm = 2.5, kCursorTickMm = 0.55, kCursorBreadthMm = 0.5;

Lettering wordsOf(const Picture& picture) { return {picture.sizes.wordsMm, QFont::Medium}; }

void paintBrackets(QPainter& painter, const Theme& theme, const QRectF& around) {
    QPainterPath brackets;
    for (const auto& [corner, dx, dy] :
         {std::tuple{around.topLeft(), 1, 1}, std::tuple{around.topRight(), -1, 1},
          std::tuple{around.bottomLeft(), 1, -1}, std::tuple{around.bottomRight(), -1, -1}}) {
        brackets.moveTo(corner + QPointF(dx * kBracketMm, 0));
        brackets.lineTo(corner);
        brackets.lineTo(corner + QPointF(0, dy * kBracketMm));
    }
    painter.strokePath(brackets, outlinePen(theme.arrowCasing, kBracketBreadthMm + 0.4));
    painter.strokePath(brackets, outlinePen(theme.accent, kBracketBreadthMm));
}

constexpr double kBandLineMm = 0.25;
constexpr float kBandOpacity = 0.12F;

enum class Mark { Selected, Target, Cursor, Band, Tag };

/// Never the look of another patch: what is carried changes with every move of the pointer.
PatchLook freshLook() {
    static std::uint64_t made = 0;
    return PatchLook() << ++made;
}

QRectF grown(const QRectF& rect, double by) { return rect.adjusted(-by, -by, by, by); }

constexpr double kLitBreadthMm = 0.5, kLitAwayMm = 0.7;

/// A line all round a part or along a jumper, in the colour of what is pointed at.
void addLit(Patches& patches, const Picture& picture) {
    const std::string& id = picture.marks.lit;
    QPainterPath around;
    if (const int part = picture.bench().partIndex(id); part >= 0) {
        const PartScene scene = sceneOf(picture, part);
        const QRectF body = findPackagePainter(scene.part.kind->package->name)->body(scene).boundingRect();
        around = roundedBox(grown(body, kLitAwayMm), kLitAwayMm);
    } else if (const int jumper = picture.bench().jumperIndex(id); jumper >= 0) {
        around = jumperShape(picture, jumper).simplified();
    } else {
        return;
    }
    patches.push_back({grown(around.boundingRect(), kLitBreadthMm), PatchLook() << "lit" << id,
                       [&picture, around](QPainter& painter) {
                           painter.setBrush(Qt::NoBrush);
                           painter.strokePath(around, outlinePen(picture.theme->arrowCasing, kLitBreadthMm + 0.5));
                           painter.strokePath(around, outlinePen(picture.theme->hover, kLitBreadthMm));
                       }});
}

void addSelection(Patches& patches, const Picture& picture) {
    for (const std::string& id : picture.marks.selected) {
        QRectF around;
        if (const int part = picture.bench().partIndex(id); part >= 0) {
            const PartScene scene = sceneOf(picture, part);
            around = findPackagePainter(scene.part.kind->package->name)->body(scene).boundingRect();
        } else if (const int jumper = picture.bench().jumperIndex(id); jumper >= 0) {
            around = jumperLine(picture, jumper).boundingRect().adjusted(-0.8, -0.8, 0.8, 0.8);
        } else if (const Note* note = picture.bench().findNote(id)) {
            around = noteFrame(picture, static_cast<int>(note - picture.bench().notes.data()));
        } else if (const PinnedTag* tag = picture.pinnedTag(id)) {
            around = tag->frame;
        } else {
            continue;
        }
        around = grown(around, kBracketAwayMm);
        patches.push_back(
            {grown(around, kBracketBreadthMm),
             PatchLook() << Mark::Selected << std::lround(around.width() * 1e3) << std::lround(around.height() * 1e3),
             [&picture, around](QPainter& painter) { paintBrackets(painter, *picture.theme, around); }});
        patches.back().movable = true;
    }
}

/// A hole that waits for a lead swells, in a ring; a refused one is crossed, so that colour doesn't say it alone. Rings are fills within
/// fills: a group of fifty things has hundreds of targets, and lines cost much more.
void paintTarget(QPainter& painter, const Theme& theme, const QRectF& ring, bool refused) {
    const QColor colour = refused ? theme.overload : theme.accent;
    const auto fill = [&painter](const QRectF& box, double corner, const QColor& with) {
        painter.fillPath(roundedBox(box, corner), with);
    };
    const double half = kTargetBreadthMm / 2;
    fill(grown(ring, half + 0.2), 0.4 + half + 0.2, theme.arrowCasing);
    fill(grown(ring, half), 0.4 + half, colour);
    fill(grown(ring, -half), 0.4 - half, blend(theme.boardTop, colour, 0.25));
    fill(QRectF(ring.center().x() - kSwollenMm / 2, ring.center().y() - kSwollenMm / 2, kSwollenMm, kSwollenMm), 0.25,
         theme.hole);
    if (!refused) return;
    painter.setPen(outlinePen(colour, kTargetBreadthMm));
    painter.drawLine(ring.topLeft() + QPointF(0.4, 0.4), ring.bottomRight() - QPointF(0.4, 0.4));
    painter.drawLine(ring.topRight() + QPointF(-0.4, 0.4), ring.bottomLeft() + QPointF(0.4, -0.4));
}

void addTargets(Patches& patches, const Picture& picture) {
    for (const Hole& hole : picture.marks.targets) {
        if (!holeMm(picture.bench(), hole)) continue;
        const Point at = picture.seenAt(hole);
        const QRectF ring(at.x - kTargetMm / 2, at.y - kTargetMm / 2, kTargetMm, kTargetMm);
        const bool refused = picture.marks.refused;
        patches.push_back(
            {grown(ring, kTargetBreadthMm), PatchLook() << Mark::Target << refused,
             [&picture, ring, refused](QPainter& painter) { paintTarget(painter, *picture.theme, ring, refused); }});
        patches.back().movable = true;
    }
}

void addCarriedPart(Patches& patches, const Picture& picture) {
    if (!picture.marks.carried) return;
    const Part& part = *picture.marks.carried;
    if (std::none_of(part.leads.begin(), part.leads.end(), [](const auto& lead) { return lead.has_value(); })) return;
    const auto alone = std::make_shared<Bench>();
    alone->boards = picture.bench().boards;
    alone->parts = {part};
    const auto table = std::make_shared<const Table>(arrange(*alone));
    const PackagePainter* look = findPackagePainter(part.kind->package->name);
    if (!look) return;
    const PartScene scene{*picture.theme, alone->parts.front(), table->parts.front()};
    patches.push_back({partBounds(scene), freshLook(), [&picture, alone, table, look](QPainter& painter) {
                           painter.save();
                           painter.setOpacity(picture.marks.refused ? kRefusedOpacity : kCarriedOpacity);
                           look->paint(painter, PartScene{*picture.theme, alone->parts.front(), table->parts.front()});
                           painter.restore();
                       }});
}

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
    const WireLook look = jumperLook(*picture.theme, colour, wire.lengthMm(), flat);
    patches.push_back({wireBounds(wire), freshLook(), [&picture, wire, look](QPainter& painter) {
                           painter.save();
                           painter.setOpacity(picture.marks.refused ? kRefusedOpacity : kCarriedOpacity);
                           paintWire(painter, *picture.theme, wire, look);
                           painter.restore();
                       }});
}

/// A square about the cursor's hole with a tick on each side: larger than a target and never mistaken for one.
void addCursor(Patches& patches, const Picture& picture) {
    if (!picture.marks.cursor || !holeMm(picture.bench(), *picture.marks.cursor)) return;
    const QPointF at = toQt(picture.seenAt(*picture.marks.cursor));
    const double half = kCursorMm / 2;
    QPainterPath frame = roundedBox({at.x() - half, at.y() - half, kCursorMm, kCursorMm}, 0.5);
    for (const QPointF side : {QPointF(1, 0), QPointF(-1, 0), QPointF(0, 1), QPointF(0, -1)}) {
        frame.moveTo(at + side * half);
        frame.lineTo(at + side * (half + kCursorTickMm));
    }
    patches.push_back({grown(frame.boundingRect(), kCursorBreadthMm), PatchLook() << Mark::Cursor,
                       [&picture, frame](QPainter& painter) {
                           painter.setBrush(Qt::NoBrush);
                           painter.strokePath(frame, outlinePen(picture.theme->arrowCasing, kCursorBreadthMm + 0.5));
                           painter.strokePath(frame, outlinePen(picture.theme->accent, kCursorBreadthMm));
                       }});
}

/// How much of parts and of what is pinned a frame would hide, mm².
double hiddenBy(const Picture& picture, const QRectF& frame) {
    double hidden = 0;
    const auto add = [&](const QRectF& thing) {
        const QRectF shared = thing & frame;
        hidden += shared.width() * shared.height();
    };
    for (int part = 0; part < static_cast<int>(picture.bench().parts.size()); ++part) {
        const PartScene scene = sceneOf(picture, part);
        add(findPackagePainter(scene.part.kind->package->name)->body(scene).boundingRect());
    }
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

void addTag(Patches& patches, const Picture& picture, Point at, const QString& text, const QColor& edge) {
    const Lettering lettering = wordsOf(picture);
    const QRectF frame = leastHiding(picture, toQt(at), tagBeside(toQt(at), text, lettering));
    patches.push_back({tagRoom(frame), PatchLook() << Mark::Tag << text << edge << lettering.sizeMm,
                       [&picture, frame, text, edge, lettering](QPainter& painter) {
                           paintTag(painter, *picture.theme, frame, text, lettering, edge);
                       }});
}

void addHoverTag(Patches& patches, const Picture& picture) {
    const Snapshot* live = picture.live();
    if (!live || picture.marks.hoverNet < 0) return;
    const Figure volt = live->shown().volt(picture.marks.hoverNet);
    const QString text = volt.isKnown() ? QString::fromStdString(volt.text()) + QStringLiteral(" above minus")
                                        : QStringLiteral("floating: nothing ties it to minus");
    addTag(patches, picture, picture.marks.hoverAt, text, picture.theme->hover);
}

void addSaid(Patches& patches, const Picture& picture) {
    if (picture.marks.say.empty()) return;
    addTag(patches, picture, picture.marks.sayAt, QString::fromStdString(picture.marks.say),
           picture.marks.refused ? picture.theme->overload : picture.theme->accent);
}

void addBand(Patches& patches, const Picture& picture) {
    if (!picture.marks.band) return;
    const QRectF band = *picture.marks.band;
    patches.push_back({grown(band, kBandLineMm), PatchLook() << Mark::Band, [&picture, band](QPainter& painter) {
                           QColor fill = picture.theme->accent;
                           fill.setAlphaF(kBandOpacity);
                           painter.setBrush(fill);
                           painter.setPen(QPen(picture.theme->accent, kBandLineMm));
                           painter.drawRect(band);
                       }});
}

}  // namespace

void addHandMarks(Patches& patches, const Picture& picture) {
    addNotes(patches, picture);
    addLit(patches, picture);
    addSelection(patches, picture);
    addMended(patches, picture);
    addCarriedPart(patches, picture);
    addCarriedGroup(patches, picture);
    addDrawnJumper(patches, picture);
    addProbe(patches, picture);
    addTargets(patches, picture);
    addGuideMarks(patches, picture);
    addCursor(patches, picture);
    addHoverTag(patches, picture);
    addSaid(patches, picture);
    addBand(patches, picture);
}

}  // namespace tiepoint::ui
