#include "ui/paint/built_marks.h"

#include "ui/paint/bench_painter.h"
#include "ui/paint/hop_marks.h"
#include "ui/paint/label_painter.h"
#include "ui/paint/mend_painter.h"
#include "ui/paint/shade.h"

#include <QStringList>

namespace tiepoint::ui {
namespace {

constexpr double kDashMm = 0.26, kDashCasingMm = 0.7;
constexpr double kTooManyMm = 2.2, kTooManyInkMm = 0.9;

struct DashedMark {
    std::vector<Point> outline;
    void paint(QPainter& painter, const Theme& theme) const {
        QPainterPath path;
        for (const Point& corner : outline) {
            if (path.elementCount() == 0)
                path.moveTo(toQt(corner));
            else
                path.lineTo(toQt(corner));
        }
        path.closeSubpath();
        painter.setBrush(Qt::NoBrush);
        painter.strokePath(path, outlinePen(theme.arrowCasing, kDashCasingMm));
        QPen pen = outlinePen(theme.text, kDashMm);
        pen.setDashPattern({3, 2.4});
        pen.setCapStyle(Qt::FlatCap);
        painter.strokePath(path, pen);
    }
    friend bool operator==(const DashedMark&, const DashedMark&) = default;
};

struct TooManyMark {
    void paint(QPainter& painter, const Theme& theme) const {
        QPainterPath cross(QPointF(-kTooManyMm, -kTooManyMm));
        cross.lineTo(kTooManyMm, kTooManyMm);
        cross.moveTo(kTooManyMm, -kTooManyMm);
        cross.lineTo(-kTooManyMm, kTooManyMm);
        painter.strokePath(cross, outlinePen(theme.arrowCasing, 2 * kTooManyInkMm));
        painter.strokePath(cross, outlinePen(theme.accent, kTooManyInkMm));
    }
    friend bool operator==(const TooManyMark&, const TooManyMark&) = default;
};

void addDashed(Patches& patches, const QPainterPath& shape) {
    for (const QPolygonF& polygon : shape.simplified().toSubpathPolygons()) {
        DashedMark mark;
        for (const QPointF& corner : polygon) mark.outline.push_back(fromQt(corner));
        patches.push_back(fixedPatch(polygon.boundingRect().adjusted(-1, -1, 1, 1), std::move(mark)));
    }
}

void addBuiltWords(Patches& patches, Point at, const QString& words, double wordsMm) {
    if (words.isEmpty()) return;
    const Lettering lettering{wordsMm, QFont::DemiBold};
    patches.push_back(tagPatch(tagBeside(toQt(at), words, lettering), words, lettering, TagEdge::Accent));
}

void addBuiltPart(Patches& patches, const Picture& plan, const Picture& built, int index) {
    const Part& part = built.bench().parts[static_cast<std::size_t>(index)];
    const int planned = plan.bench().partIndex(part.id);
    if (planned < 0) return;
    const Part& right = plan.bench().parts[static_cast<std::size_t>(planned)];
    if (right == part) return;
    if (right.leads != part.leads) addDashed(patches, partShape(built, index));
    for (std::size_t lead = 0; lead < part.leads.size() && lead < right.leads.size(); ++lead) {
        if (part.leads[lead] && right.leads[lead] && part.leads[lead] != right.leads[lead])
            addHop(patches, built.seenAt(*part.leads[lead]), plan.seenAt(*right.leads[lead]));
    }
    if (right.kind != part.kind) return;
    QStringList words{newSettings(part.kind->values, right.values, part.values),
                      newSettings(part.kind->state, right.state, part.state)};
    words.removeAll(QString());
    if (words.isEmpty()) return;
    addBuiltWords(patches, plan.table->parts[static_cast<std::size_t>(planned)].pose.centre,
                  QStringLiteral("built with ") + words.join(QStringLiteral(", ")), plan.sizes.wordsMm);
}

void addBuiltJumper(Patches& patches, const Picture& plan, const Picture& built, int index) {
    const Jumper& jumper = built.bench().jumpers[static_cast<std::size_t>(index)];
    const Jumper* right = plan.bench().findJumper(jumper.id);
    const QPainterPath shape = jumperShape(built, index);
    if (!right) {
        addDashed(patches, shape);
        const QPointF at = shape.boundingRect().center();
        constexpr double kReachMm = kTooManyMm + 2 * kTooManyInkMm;
        return patches.push_back(
            movablePatch(fromQt(at), {-kReachMm, -kReachMm, 2 * kReachMm, 2 * kReachMm}, TooManyMark{}));
    }
    if (right->ends == jumper.ends) return;
    addDashed(patches, shape);
    for (std::size_t end = 0; end < jumper.ends.size(); ++end) {
        if (jumper.ends[end] != right->ends[end])
            addHop(patches, endMm(built.bench(), *built.table, jumper.ends[end]),
                   endMm(plan.bench(), *plan.table, right->ends[end]));
    }
}

}  // namespace

BuiltInput builtInput(const Picture& picture) {
    if (!picture.marks.built) return {};
    return {BenchSeen::of(picture, picture.layout->bench), BenchSeen::of(picture, picture.marks.built)};
}

void addBuilt(Patches& patches, const BuiltInput& input) {
    if (!input.built.bench) return;
    const Picture plan = input.plan.picture(), built = input.built.picture();
    for (int part = 0; part < static_cast<int>(built.bench().parts.size()); ++part)
        addBuiltPart(patches, plan, built, part);
    for (int jumper = 0; jumper < static_cast<int>(built.bench().jumpers.size()); ++jumper)
        addBuiltJumper(patches, plan, built, jumper);
    for (int jumper = 0; jumper < static_cast<int>(plan.bench().jumpers.size()); ++jumper) {
        if (!built.bench().findJumper(plan.bench().jumpers[static_cast<std::size_t>(jumper)].id))
            addBuiltWords(patches, fromQt(jumperShape(plan, jumper).boundingRect().center()), QStringLiteral("missing"),
                          plan.sizes.wordsMm);
    }
}

}  // namespace tiepoint::ui
