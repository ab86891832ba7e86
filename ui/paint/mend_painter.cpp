#include "ui/paint/mend_painter.h"

#include "core/bench/describe.h"
#include "ui/paint/bench_painter.h"
#include "ui/paint/curve.h"
#include "ui/paint/label_painter.h"
#include "ui/paint/rest_patch.h"
#include "ui/paint/shade.h"

#include <QStringList>

#include <utility>

namespace tiepoint::ui {
namespace {

constexpr double kMendOpacity = 0.8;
constexpr QRectF kMendRing(-1.2, -1.2, 2.4, 2.4);
constexpr double kMendBreadthMm = 0.34, kMendCasingMm = 0.4;
constexpr double kCrossMm = 2.2, kCrossBreadthMm = 0.5;

struct MendedHoleMark {
    void paint(QPainter& painter, const Theme& theme) const {
        painter.setBrush(Qt::NoBrush);
        painter.setPen(outlinePen(theme.arrowCasing, kMendBreadthMm + kMendCasingMm));
        painter.drawPath(roundedBox(kMendRing, 0.5));
        painter.setPen(outlinePen(theme.accent, kMendBreadthMm));
        painter.drawPath(roundedBox(kMendRing, 0.5));
    }
    friend bool operator==(const MendedHoleMark&, const MendedHoleMark&) = default;
};

struct TakenAwayMark {
    void paint(QPainter& painter, const Theme& theme) const {
        QPainterPath cross(QPointF(-kCrossMm, -kCrossMm));
        cross.lineTo(kCrossMm, kCrossMm);
        cross.moveTo(kCrossMm, -kCrossMm);
        cross.lineTo(-kCrossMm, kCrossMm);
        painter.setBrush(Qt::NoBrush);
        painter.strokePath(cross, outlinePen(theme.arrowCasing, kCrossBreadthMm + 2 * kMendCasingMm));
        painter.strokePath(cross, outlinePen(theme.accent, kCrossBreadthMm));
    }
    friend bool operator==(const TakenAwayMark&, const TakenAwayMark&) = default;
};

QRectF grownAll(const QRectF& rect, double byMm) { return rect.adjusted(-byMm, -byMm, byMm, byMm); }

void addRing(Patches& patches, Point at) {
    patches.push_back(movablePatch(at, grownAll(kMendRing, kMendBreadthMm + kMendCasingMm), MendedHoleMark{}));
}

void addCross(Patches& patches, Point at) {
    constexpr double kReachMm = kCrossMm + kCrossBreadthMm + kMendCasingMm;
    patches.push_back(movablePatch(at, {-kReachMm, -kReachMm, 2 * kReachMm, 2 * kReachMm}, TakenAwayMark{}));
}

void addNewValue(Patches& patches, Point at, const QString& words, double wordsMm) {
    if (words.isEmpty()) return;
    const Lettering lettering{wordsMm, QFont::DemiBold};
    patches.push_back(tagPatch(tagBeside(toQt(at), words, lettering), words, lettering, TagEdge::Accent));
}

void addGhost(Patches& patches, Patch patch) {
    patch.opacity = kMendOpacity;
    patches.push_back(std::move(patch));
}

void addMendedPart(Patches& patches, const Picture& now, const Picture& after, int index) {
    const Part& part = after.bench().parts[static_cast<std::size_t>(index)];
    const Part* before = now.bench().findPart(part.id);
    if (before && *before == part) return;
    addGhost(patches, restPatch(after, index));
    for (std::size_t lead = 0; lead < part.leads.size(); ++lead) {
        const bool moves = part.leads[lead] && (!before || before->leads[lead] != part.leads[lead]);
        if (moves) addRing(patches, after.seenAt(*part.leads[lead]));
    }
    if (!before || before->kind != part.kind) return;
    QStringList words{newSettings(part.kind->values, before->values, part.values),
                      newSettings(part.kind->state, before->state, part.state)};
    words.removeAll(QString());
    addNewValue(patches, after.table->parts[static_cast<std::size_t>(index)].pose.centre,
                words.join(QStringLiteral(", ")), after.sizes.wordsMm);
}

void addMendedJumper(Patches& patches, const Picture& now, const Picture& after, int index) {
    const Jumper& jumper = after.bench().jumpers[static_cast<std::size_t>(index)];
    const Jumper* before = now.bench().findJumper(jumper.id);
    if (before && *before == jumper) return;
    addGhost(patches, restPatchOfJumper(after, index));
    for (std::size_t end = 0; end < jumper.ends.size(); ++end) {
        if (!before || before->ends[end] != jumper.ends[end])
            addRing(patches, endMm(after.bench(), *after.table, jumper.ends[end]));
    }
}

void addTakenAway(Patches& patches, const Picture& now, const Bench& mended) {
    const Bench& bench = now.bench();
    for (std::size_t part = 0; part < bench.parts.size(); ++part) {
        if (!mended.findPart(bench.parts[part].id)) addCross(patches, now.table->parts[part].pose.centre);
    }
    for (int jumper = 0; jumper < static_cast<int>(bench.jumpers.size()); ++jumper) {
        if (mended.findJumper(bench.jumpers[static_cast<std::size_t>(jumper)].id)) continue;
        const Polyline line = Polyline::of(ui::jumperLine(now, jumper));
        addCross(patches, fromQt(line.at(line.lengthMm() / 2).at));
    }
}

}  // namespace

QString newSettings(const std::vector<ValueSpec>& specs, const std::vector<Setting>& before,
                    const std::vector<Setting>& after) {
    QStringList words;
    for (std::size_t i = 0; i < specs.size(); ++i) {
        if (before[i] == after[i]) continue;
        const QString value = QString::fromStdString(describeSetting(specs[i], after[i].value_or(specs[i].fallback)));
        words << (specs[i].type == ValueType::Switch
                      ? QString::fromStdString(specs[i].label) + QStringLiteral(": ") + value
                      : value);
    }
    return words.join(QStringLiteral(", "));
}

MendInput mendInput(const Picture& picture) {
    if (!picture.marks.mended) return {};
    return {BenchSeen::of(picture, picture.layout->bench), BenchSeen::of(picture, picture.marks.mended)};
}

void addMended(Patches& patches, const MendInput& input) {
    if (!input.after.bench) return;
    const Picture now = input.before.picture(), after = input.after.picture();
    for (int part = 0; part < static_cast<int>(after.bench().parts.size()); ++part)
        addMendedPart(patches, now, after, part);
    for (int jumper = 0; jumper < static_cast<int>(after.bench().jumpers.size()); ++jumper)
        addMendedJumper(patches, now, after, jumper);
    addTakenAway(patches, now, after.bench());
}

}  // namespace tiepoint::ui
