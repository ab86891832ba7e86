#include "ui/sheet/glide.h"

namespace tiepoint::ui {

std::shared_ptr<const BenchDiagram> betweenSheets(const BenchDiagram& before, const BenchDiagram& now, double share) {
    auto between = std::make_shared<BenchDiagram>(now);
    std::vector<Point> offs(now.diagram.parts.size());
    for (std::size_t i = 0; i < offs.size(); ++i) {
        PlacedPart& part = between->diagram.parts[i];
        const int old = before.netlist.partIndex(now.netlist.parts[i].id);
        if (old < 0) continue;
        const Point off = (before.diagram.parts[static_cast<std::size_t>(old)].pose.at - part.pose.at) * (1 - share);
        offs[i] = off;
        part.pose.at = part.pose.at + off;
        part.body.left += off.x, part.body.top += off.y;
        for (SheetLead& lead : part.leads) lead.at = lead.at + off;
    }
    for (SheetWord& word : between->diagram.words) {
        word.frame.left += offs[static_cast<std::size_t>(word.part)].x;
        word.frame.top += offs[static_cast<std::size_t>(word.part)].y;
    }
    between->diagram.width = before.diagram.width * (1 - share) + now.diagram.width * share;
    between->diagram.height = before.diagram.height * (1 - share) + now.diagram.height * share;
    return between;
}

}  // namespace tiepoint::ui
