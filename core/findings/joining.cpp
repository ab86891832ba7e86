#include "core/findings/joining.h"

#include "core/base/stopping.h"
#include "core/edit/holes.h"
#include "core/edit/placement.h"
#include "core/findings/figure_words.h"
#include "core/words/words.h"

#include <algorithm>
#include <limits>
#include <tuple>

namespace tiepoint {
namespace {

/// More tries than this cost time and offer nothing a person would prefer.
constexpr std::size_t kMostBridges = 8;

bool isPlus(const Hole& hole) { return hole.line == Line::TopPlus || hole.line == Line::BottomPlus; }

/// Common practice: red for plus, black for minus, another colour between.
int suitingColour(const Hole& a, const Hole& b) {
    for (const Hole& hole : {a, b}) {
        if (isRail(hole.line)) return findJumperColour(isPlus(hole) ? "red" : "black");
    }
    return findJumperColour("yellow");
}

bool isUsed(const Layout& layout, const Hole& hole) {
    const int strip = layout.stripOfHole[layout.holeIndex(hole)];
    for (int index = 0; index < layout.holeCount(); ++index) {
        if (layout.stripOfHole[index] == strip && layout.jointOfHole[index] >= 0) return true;
    }
    return false;
}

struct Target {
    double away;
    int net;
    Hole hole;
};

/// For each net that suits, its free hole nearest to a place.
std::vector<Target> targetsFrom(const Examination& examination, const Hole& from,
                                const std::function<bool(int)>& suits) {
    stopIfAsked();
    const Layout& layout = examination.layout();
    const Point place = *holeMm(examination.bench(), from);
    const int own = layout.netOfHole(layout.holeIndex(from));
    std::vector<Target> nearest(layout.netCount, {std::numeric_limits<double>::infinity(), -1, {}});
    for (int index = 0; index < layout.holeCount(); ++index) {
        const int net = layout.netOfHole(index);
        if (net == own || layout.jointOfHole[index] >= 0 || !layout.netUsed[net] || !suits(net)) continue;
        const Hole hole = layout.holeAt(index);
        const double away = distance(*holeMm(examination.bench(), hole), place);
        if (away < nearest[net].away) nearest[net] = {away, net, hole};
    }
    std::erase_if(nearest, [](const Target& target) { return target.net < 0; });
    return nearest;
}

}  // namespace

std::optional<Mend> jumperMend(const Bench& bench, const Hole& a, const Hole& b) {
    return jumperMend(Occupancy(bench), a, b);
}

std::optional<Mend> jumperMend(const Occupancy& around, const Hole& a, const Hole& b) {
    const Bench& bench = around.bench();
    const auto from = nearestFreeInStrip(around, a), to = nearestFreeInStrip(around, b);
    if (!from || !to) return std::nullopt;
    Jumper jumper;
    jumper.id = freeId(bench, "W");
    jumper.ends = {*from, *to};
    jumper.colour = suitingColour(*from, *to);
    return Mend{say("mend.join", {{"one", holeName(bench, *from)}, {"other", holeName(bench, *to)}}),
                {say("history.add", {{"thing", jumper.id}}), {AddJumper{jumper}}}};
}

std::vector<Mend> bridgeMends(const Examination& examination, const std::vector<Hole>& from,
                              const std::function<bool(int)>& suits) {
    std::vector<std::tuple<double, Hole, Hole>> bridges;
    for (const Hole& hole : from) {
        for (const Target& target : targetsFrom(examination, hole, suits))
            bridges.emplace_back(target.away, hole, target.hole);
    }
    std::ranges::sort(bridges);
    std::vector<Mend> mends;
    for (const auto& [away, a, b] : bridges) {
        if (mends.size() == kMostBridges) break;
        if (auto mend = jumperMend(examination.around(), a, b)) mends.push_back(std::move(*mend));
    }
    return mends;
}

void suspectGap(const Examination& examination, const Hole& a, const Hole& b, const std::string& text,
                Suspicions& found) {
    const Layout& layout = examination.layout();
    const int netA = layout.netOfHole(layout.holeIndex(a)), netB = layout.netOfHole(layout.holeIndex(b));
    if (netA == netB || !isUsed(layout, a) || !isUsed(layout, b)) return;
    const auto mend = jumperMend(examination.around(), a, b);
    if (!mend) return;
    for (const int light : examination.darkLights()) {
        stopIfAsked();
        const auto near = examination.netsNear(light);
        if (!near[netA] && !near[netB]) continue;
        Suspicion each;
        each.finding.parts = {examination.part(light).id};
        each.finding.holes = {a, b};
        each.finding.text = text;
        addFigure(each.finding, "current now", examination.mostCurrent(light));
        each.darkens = each.finding.parts;
        each.doubt = 1;
        each.proposals.push_back(*mend);
        found.push_back(std::move(each));
    }
}

}  // namespace tiepoint
