#include "ui/paint/carried_group.h"

#include "core/bench/bench_file.h"
#include "ui/paint/bench_painter.h"

#include <functional>

namespace tiepoint::ui {
namespace {

void addThing(Patches& patches, const QRectF& mm, const std::string& line, double opacity, std::function<void(QPainter&)> paint) {
    patches.push_back({mm, PatchLook() << "carried" << std::string_view(line) << opacity, [opacity, paint = std::move(paint)](QPainter& painter) {
                           painter.save();
                           painter.setOpacity(opacity);
                           paint(painter);
                           painter.restore();
                       }});
}

}  // namespace

void addCarriedGroup(Patches& patches, const Picture& picture) {
    if (!picture.marks.group) return;
    const auto group = picture.ofBench(picture.marks.group);
    const Bench& bench = group->bench();
    const double opacity = picture.marks.refused ? kRefusedOpacity : kCarriedOpacity;
    for (int part = 0; part < static_cast<int>(bench.parts.size()); ++part) {
        addThing(patches, partBounds(*group, part), partLine(bench.parts[static_cast<std::size_t>(part)]), opacity,
                 [group, part](QPainter& painter) { paintPart(painter, *group, part); });
    }
    for (int jumper = 0; jumper < static_cast<int>(bench.jumpers.size()); ++jumper) {
        addThing(patches, jumperBounds(*group, jumper), jumperLine(bench.jumpers[static_cast<std::size_t>(jumper)], bench), opacity,
                 [group, jumper](QPainter& painter) { paintJumper(painter, *group, jumper); });
    }
}

}  // namespace tiepoint::ui
