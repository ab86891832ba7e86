#include "ui/paint/mend_painter.h"

#include "core/bench/bench_file.h"
#include "core/bench/describe.h"
#include "ui/paint/bench_painter.h"
#include "ui/paint/curve.h"
#include "ui/paint/label_painter.h"
#include "ui/paint/packages/package_painter.h"
#include "ui/paint/part_scenes.h"
#include "ui/paint/shade.h"

#include <QStringList>

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr double kMendOpacity = 0.8;
constexpr double kMendRingMm = 2.4, kMendBreadthMm = 0.34, kMendCasingMm = 0.4;
constexpr double kCrossMm = 2.2, kCrossBreadthMm = 0.5;

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

void addRing(Patches& patches, const Picture& picture, QPointF at) {
    const QRectF ring(at.x() - kMendRingMm / 2, at.y() - kMendRingMm / 2, kMendRingMm, kMendRingMm);
    const double room = kMendBreadthMm + kMendCasingMm;
    patches.push_back(
        {ring.adjusted(-room, -room, room, room), PatchLook() << "mended hole", [&picture, ring](QPainter& painter) {
             painter.setBrush(Qt::NoBrush);
             painter.setPen(outlinePen(picture.theme->arrowCasing, kMendBreadthMm + kMendCasingMm));
             painter.drawPath(roundedBox(ring, 0.5));
             painter.setPen(outlinePen(picture.theme->accent, kMendBreadthMm));
             painter.drawPath(roundedBox(ring, 0.5));
         }});
}

void addCross(Patches& patches, const Picture& picture, QPointF at) {
    const double room = kCrossMm + kCrossBreadthMm + kMendCasingMm;
    patches.push_back({QRectF(at.x() - room, at.y() - room, 2 * room, 2 * room), PatchLook() << "taken away",
                       [&picture, at](QPainter& painter) {
                           QPainterPath cross(at + QPointF(-kCrossMm, -kCrossMm));
                           cross.lineTo(at + QPointF(kCrossMm, kCrossMm));
                           cross.moveTo(at + QPointF(kCrossMm, -kCrossMm));
                           cross.lineTo(at + QPointF(-kCrossMm, kCrossMm));
                           painter.setBrush(Qt::NoBrush);
                           painter.strokePath(
                               cross, outlinePen(picture.theme->arrowCasing, kCrossBreadthMm + 2 * kMendCasingMm));
                           painter.strokePath(cross, outlinePen(picture.theme->accent, kCrossBreadthMm));
                       }});
}

void addWords(Patches& patches, const Picture& picture, QPointF at, const QString& words) {
    if (words.isEmpty()) return;
    const Lettering lettering{picture.sizes.wordsMm, QFont::DemiBold};
    const QRectF frame = tagBeside(at, words, lettering);
    patches.push_back({tagRoom(frame), PatchLook() << "mended value" << words << lettering.sizeMm,
                       [&picture, frame, words, lettering](QPainter& painter) {
                           paintTag(painter, *picture.theme, frame, words, lettering, picture.theme->accent);
                       }});
}

void addGhost(Patches& patches, const QRectF& mm, const std::string& line, std::function<void(QPainter&)> paint) {
    patches.push_back(
        {mm, PatchLook() << "mended" << std::string_view(line), [paint = std::move(paint)](QPainter& painter) {
             painter.save();
             painter.setOpacity(kMendOpacity);
             paint(painter);
             painter.restore();
         }});
}

void addMendedPart(Patches& patches, const Picture& picture, const std::shared_ptr<const Picture>& after, int index) {
    const Part& part = after->bench().parts[static_cast<std::size_t>(index)];
    const Part* before = picture.bench().findPart(part.id);
    if (before && *before == part) return;
    addGhost(patches, partBounds(*after, index), partLine(part),
             [after, index](QPainter& painter) { paintPart(painter, *after, index); });
    for (std::size_t lead = 0; lead < part.leads.size(); ++lead) {
        const bool moves = part.leads[lead] && (!before || before->leads[lead] != part.leads[lead]);
        if (moves) addRing(patches, picture, toQt(after->seenAt(*part.leads[lead])));
    }
    if (!before || before->kind != part.kind) return;
    QStringList words{newSettings(part.kind->values, before->values, part.values),
                      newSettings(part.kind->state, before->state, part.state)};
    words.removeAll(QString());
    addWords(patches, picture, toQt(sceneOf(*after, index).place.pose.centre), words.join(QStringLiteral(", ")));
}

void addMendedJumper(Patches& patches, const Picture& picture, const std::shared_ptr<const Picture>& after, int index) {
    const Jumper& jumper = after->bench().jumpers[static_cast<std::size_t>(index)];
    const Jumper* before = picture.bench().findJumper(jumper.id);
    if (before && *before == jumper) return;
    addGhost(patches, jumperBounds(*after, index), jumperLine(jumper, after->bench()),
             [after, index](QPainter& painter) { paintJumper(painter, *after, index); });
    for (std::size_t end = 0; end < jumper.ends.size(); ++end) {
        if (!before || before->ends[end] != jumper.ends[end])
            addRing(patches, picture, toQt(endMm(after->bench(), *after->table, jumper.ends[end])));
    }
}

void addTakenAway(Patches& patches, const Picture& picture, const Bench& mended) {
    const Bench& bench = picture.bench();
    for (int part = 0; part < static_cast<int>(bench.parts.size()); ++part) {
        if (!mended.findPart(bench.parts[static_cast<std::size_t>(part)].id))
            addCross(patches, picture, toQt(sceneOf(picture, part).place.pose.centre));
    }
    for (int jumper = 0; jumper < static_cast<int>(bench.jumpers.size()); ++jumper) {
        if (mended.findJumper(bench.jumpers[static_cast<std::size_t>(jumper)].id)) continue;
        const Polyline line = Polyline::of(ui::jumperLine(picture, jumper));
        addCross(patches, picture, line.at(line.lengthMm() / 2).at);
    }
}

}  // namespace

void addMended(Patches& patches, const Picture& picture) {
    if (!picture.marks.mended) return;
    const auto after = picture.ofBench(picture.marks.mended);
    for (int part = 0; part < static_cast<int>(after->bench().parts.size()); ++part)
        addMendedPart(patches, picture, after, part);
    for (int jumper = 0; jumper < static_cast<int>(after->bench().jumpers.size()); ++jumper)
        addMendedJumper(patches, picture, after, jumper);
    addTakenAway(patches, picture, after->bench());
}

}  // namespace tiepoint::ui
