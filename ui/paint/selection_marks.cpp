#include "ui/paint/selection_marks.h"

#include "ui/paint/bench_painter.h"
#include "ui/paint/note_painter.h"
#include "ui/paint/packages/package_painter.h"
#include "ui/paint/part_scenes.h"
#include "ui/paint/shade.h"

#include <tuple>

namespace tiepoint::ui {
namespace {

constexpr double kBracketMm = 1.3, kBracketBreadthMm = 0.42, kBracketAwayMm = 0.7;

QRectF spreadBy(const QRectF& rect, double by) { return rect.adjusted(-by, -by, by, by); }

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

struct BracketsMark {
    double widthMm, heightMm;
    void paint(QPainter& painter, const Theme& theme) const {
        paintBrackets(painter, theme, {0, 0, widthMm, heightMm});
    }
    friend bool operator==(const BracketsMark&, const BracketsMark&) = default;
};

/// The line from a menu to what it is about, as broad as the brackets there.
struct TieMark {
    Point from, to;
    void paint(QPainter& painter, const Theme& theme) const {
        painter.setPen(outlinePen(theme.arrowCasing, kBracketBreadthMm + 0.4));
        painter.drawLine(toQt(from), toQt(to));
        painter.setPen(outlinePen(theme.accent, kBracketBreadthMm));
        painter.drawLine(toQt(from), toQt(to));
    }
    friend bool operator==(const TieMark&, const TieMark&) = default;
};

}  // namespace

QRectF bodyFrame(const Picture& picture, int part) {
    const PartScene scene = sceneOf(picture, part);
    return findPackagePainter(scene.part.kind->package->name)->body(scene).boundingRect();
}

QRectF selectionFrame(const Picture& picture, const std::string& id) {
    QRectF around;
    if (const int part = picture.bench().partIndex(id); part >= 0) {
        around = bodyFrame(picture, part);
    } else if (const int jumper = picture.bench().jumperIndex(id); jumper >= 0) {
        around = jumperLine(picture, jumper).boundingRect().adjusted(-0.8, -0.8, 0.8, 0.8);
    } else if (const Note* note = picture.bench().findNote(id)) {
        around = noteFrame(picture, static_cast<int>(note - picture.bench().notes.data()));
    } else if (const PinnedTag* tag = picture.pinnedTag(id)) {
        around = tag->frame;
    } else {
        return {};
    }
    return spreadBy(around, kBracketAwayMm);
}

void addSelection(Patches& patches, const Picture& picture) {
    for (const std::string& id : picture.marks.selected) {
        const QRectF around = selectionFrame(picture, id);
        if (around.isEmpty()) continue;
        const Point size = placeFrom({}, {around.width(), around.height()});
        patches.push_back(movablePatch(fromQt(around.topLeft()), spreadBy({0, 0, size.x, size.y}, kBracketBreadthMm),
                                       BracketsMark{size.x, size.y}));
    }
}

void addTie(Patches& patches, const Picture& picture) {
    if (!picture.marks.tie) return;
    const auto& [from, to] = *picture.marks.tie;
    patches.push_back(
        fixedPatch(spreadBy(QRectF(toQt(from), toQt(to)).normalized(), kBracketBreadthMm), TieMark{from, to}));
}

}  // namespace tiepoint::ui
