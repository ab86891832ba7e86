#include "ui/sheet/sheet_arrows.h"

#include "core/snapshot/readings.h"

#include <cmath>

namespace tiepoint::ui {
namespace {

/// By place: how far it lies from the source along the current, so that arrows run on over joints. One tree over all ways; where a loop closes
/// they begin anew.
std::vector<double> waysFromSource(const BenchDiagram& sheet, const std::vector<double>& currents) {
    std::vector<std::vector<int>> at(static_cast<std::size_t>(sheet.places));
    for (std::size_t way = 0; way < sheet.ways.size(); ++way) {
        at[sheet.ways[way].fromPlace].push_back(static_cast<int>(way));
        at[sheet.ways[way].toPlace].push_back(static_cast<int>(way));
    }
    std::vector<double> along(at.size(), 0);
    std::vector<char> known(at.size());
    std::vector<int> ready;
    for (std::size_t start = 0; start < at.size(); ++start) {
        if (known[start]) continue;
        known[start] = 1;
        ready.push_back(static_cast<int>(start));
        while (!ready.empty()) {
            const int place = ready.back();
            ready.pop_back();
            for (const int way : at[place]) {
                const SheetWay& each = sheet.ways[way];
                const bool forth = each.fromPlace == place;
                const int other = forth ? each.toPlace : each.fromPlace;
                if (known[other]) continue;
                known[other] = 1;
                const double span = distance(each.from, each.to);
                along[other] = along[place] + ((currents[way] >= 0) == forth ? span : -span);
                ready.push_back(other);
            }
        }
    }
    return along;
}

}  // namespace

std::vector<ArrowMark> sheetArrows(const SheetPicture& picture) {
    std::vector<ArrowMark> marks;
    const BenchDiagram& sheet = *picture.sheet;
    const Snapshot* live = picture.live();
    if (!live) return marks;
    const std::vector<double> currents = sheet.currents(*live);
    const std::vector<double> along = waysFromSource(sheet, currents);
    const bool electrons = picture.views.arrows == Arrows::Electrons;
    for (std::size_t way = 0; way < sheet.ways.size(); ++way) {
        const double ampere = std::abs(currents[way]);
        if (!(ampere >= kNoCurrentAmpere)) continue;
        const SheetWay& each = sheet.ways[way];
        const double share = std::min(1.0, ampere / picture.fullScaleAmpere);
        const bool dots = share < kThreadShare;
        const double spacing = dots ? kDotSpacingMm : kArrowSpacingMm, span = distance(each.from, each.to);
        const double begin = along[currents[way] >= 0 ? each.fromPlace : each.toPlace];
        const Point from = currents[way] >= 0 ? each.from : each.to, to = currents[way] >= 0 ? each.to : each.from;
        const Point step = span > 0 ? (to - from) * (1 / span) : Point{1, 0};
        const double moved = picture.phaseMm * share * (electrons ? -1 : 1);
        double first = std::fmod(moved - begin, spacing);
        if (first < 0) first += spacing;
        ArrowMark mark;
        mark.angle = std::atan2(step.y, step.x) + (electrons ? 3.14159265358979 : 0);
        mark.breadthMm = arrowBreadthMm(share);
        mark.level = dots ? 0 : arrowLevel(share);
        mark.look = dots ? MarkLook::Dot : MarkLook::Cased;
        if (each.part >= 0 && live->layout->bench->parts[each.part].kind->emitsLight && !dots) {
            mark.look = MarkLook::OnLight;
            mark.opacity = 0.8;
        }
        for (double s = first; s < span; s += spacing) {
            mark.at = from + step * s;
            marks.push_back(mark);
        }
    }
    return marks;
}

}  // namespace tiepoint::ui
