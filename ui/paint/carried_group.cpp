#include "ui/paint/carried_group.h"

#include "core/bench/bench_file.h"
#include "ui/paint/bench_painter.h"
#include "ui/paint/shade.h"

#include <cmath>
#include <functional>
#include <string>

namespace tiepoint::ui {
namespace {

constexpr double kLookMm = 1e-3;  ///< places closer than this look the same

/// Folds where something is, as seen from the corner of its patch, so that it looks the same in other holes.
class Outline {
public:
    Outline(const QRectF& mm, double opacity) : corner_(mm.topLeft()) { look_ << "carried" << opacity; }
    Outline& add(QPointF at) {
        look_ << std::lround((at.x() - corner_.x()) / kLookMm) << std::lround((at.y() - corner_.y()) / kLookMm);
        return *this;
    }
    Outline& add(std::string_view words) {
        look_ << words;
        return *this;
    }
    Outline& add(double figure) {
        look_ << figure;
        return *this;
    }
    const PatchLook& look() const { return look_; }

private:
    QPointF corner_;
    PatchLook look_;
};

/// What a part is apart from its name and its place.
std::string natureOf(Part part) {
    part.id.clear();
    part.leads.assign(part.leads.size(), std::nullopt);
    return partLine(part);
}

PatchLook lookOf(const Picture& group, int index, const QRectF& mm, double opacity) {
    const auto i = static_cast<std::size_t>(index);
    const PartPlace& place = group.table->parts[i];
    Outline outline(mm, opacity);
    outline.add(natureOf(group.bench().parts[i])).add(toQt(place.pose.centre)).add(place.pose.angle);
    for (const Point& lead : place.leadsMm) outline.add(toQt(lead));
    return outline.look();
}

PatchLook lookOf(const Picture& group, const Jumper& jumper, int index, const QRectF& mm, double opacity) {
    Outline outline(mm, opacity);
    outline.add(jumper.colour).add(jumper.flat ? 1.0 : 0.0);
    const QPainterPath line = jumperLine(group, index);
    for (int i = 0; i < line.elementCount(); ++i) outline.add(QPointF(line.elementAt(i)));
    return outline.look();
}

Patch faded(const QRectF& mm, const PatchLook& look, double opacity, std::function<void(QPainter&)> paint) {
    Patch patch{mm, look, [opacity, paint = std::move(paint)](QPainter& painter) {
                    painter.save();
                    painter.setOpacity(opacity);
                    paint(painter);
                    painter.restore();
                }};
    patch.movable = true;
    return patch;
}

}  // namespace

void addCarriedGroup(Patches& patches, const Picture& picture) {
    if (!picture.marks.group) return;
    const auto group = picture.ofBench(picture.marks.group);
    const Bench& bench = group->bench();
    const double opacity = picture.marks.refused ? kRefusedOpacity : kCarriedOpacity;
    for (int part = 0; part < static_cast<int>(bench.parts.size()); ++part) {
        const QRectF mm = partBounds(*group, part);
        patches.push_back(
            faded(mm, lookOf(*group, part, mm, opacity), opacity, [group, part](QPainter& painter) { paintPart(painter, *group, part); }));
    }
    for (int jumper = 0; jumper < static_cast<int>(bench.jumpers.size()); ++jumper) {
        const QRectF mm = jumperBounds(*group, jumper);
        patches.push_back(faded(mm, lookOf(*group, bench.jumpers[static_cast<std::size_t>(jumper)], jumper, mm, opacity), opacity,
                                [group, jumper](QPainter& painter) { paintJumper(painter, *group, jumper); }));
    }
}

}  // namespace tiepoint::ui
