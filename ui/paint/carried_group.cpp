#include "ui/paint/carried_group.h"

#include "ui/paint/bench_painter.h"
#include "ui/paint/rest_look.h"
#include "ui/paint/shade.h"

#include <functional>

namespace tiepoint::ui {
namespace {

Patch fadedPatch(const QRectF& mm, PatchLook look, double opacity, std::function<void(QPainter&)> paint) {
    Patch patch{mm, look, std::move(paint)};
    patch.movable = true;  // as the thing itself where it lies, whose stamp it shares
    patch.opacity = opacity;
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
        patches.push_back(fadedPatch(mm, restLook(*group, part, mm), opacity,
                                     [group, part](QPainter& painter) { paintPart(painter, *group, part); }));
    }
    for (int jumper = 0; jumper < static_cast<int>(bench.jumpers.size()); ++jumper) {
        const QRectF mm = jumperBounds(*group, jumper);
        patches.push_back(fadedPatch(mm, restLookOfJumper(*group, jumper, mm), opacity,
                                     [group, jumper](QPainter& painter) { paintJumper(painter, *group, jumper); }));
    }
}

}  // namespace tiepoint::ui
