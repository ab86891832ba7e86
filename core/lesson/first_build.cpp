// The board is searched for the chain that is furthest on: any resistor with any LED, in either order between plus and minus.

#include "core/lesson/first_build.h"

#include "core/bench/table.h"
#include "core/edit/holes.h"
#include "core/edit/placement.h"
#include "core/parts/outline.h"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

namespace tiepoint {
namespace {

constexpr double kLit = 0.2;
constexpr double kDark = 0.02;
constexpr int kFirstColumn = 8, kUsualSpan = 5;

/// One resistor and one LED, and how far they have come.
struct Chain {
    int resistor = -1, led = -1, supply = -1;
    int step = 0;
    bool reversed = false;  ///< between plus and minus, but the wrong way round
};

class Judge {
public:
    explicit Judge(const Snapshot& snapshot)
        : s_(snapshot),
          layout_(*snapshot.layout),
          bench_(*snapshot.layout->bench) {}

    Chain best() const {
        Chain best;
        const int supply = find([](const PartKind& kind) { return kind.isSupply; }, 0);
        for (int r = nextResistor(0); r >= 0; r = nextResistor(r + 1)) {
            keep(best, judged(r, -1, supply));
            for (int d = nextLed(0); d >= 0; d = nextLed(d + 1)) keep(best, judged(r, d, supply));
        }
        if (best.supply < 0) best.supply = supply;
        return best;
    }

    int net(int part, int lead) const { return layout_.netOfLead[layout_.leadIndex(part, lead)]; }

private:
    static void keep(Chain& best, const Chain& other) {
        if (best.resistor < 0 || other.step > best.step) best = other;
    }

    template <class Suits>
    int find(Suits suits, int from) const {
        for (int part = from; part < static_cast<int>(bench_.parts.size()); ++part)
            if (suits(*bench_.parts[part].kind)) return part;
        return -1;
    }
    int nextResistor(int from) const {
        return find([](const PartKind& kind) { return resistanceValue(kind) >= 0; }, from);
    }
    int nextLed(int from) const {
        return find([](const PartKind& kind) { return kind.needsResistor; }, from);
    }

    bool isIn(int part) const {
        const auto& leads = bench_.parts[part].leads;
        return std::all_of(leads.begin(), leads.end(), [](const auto& lead) { return lead.has_value(); }) &&
               net(part, 0) != net(part, 1);
    }

    Chain judged(int resistor, int led, int supply) const {
        Chain chain{resistor, led, supply, 0, false};
        if (!isIn(resistor)) return chain;
        chain.step = 1;
        if (led < 0 || !isIn(led)) return chain;
        // Where the two meet, and the outer ends of the chain.
        for (const int r : {0, 1}) {
            for (const int d : {0, 1}) {
                if (net(resistor, r) != net(led, d)) continue;
                chain.step = 2;
                judgeEnds(chain, net(resistor, 1 - r), net(led, 1 - d), d == 0);
                return chain;
            }
        }
        return chain;
    }

    /// `anodeInside`: the anode is where they meet, so plus belongs to the resistor's outer end.
    void judgeEnds(Chain& chain, int resistorEnd, int ledEnd, bool anodeInside) const {
        if (chain.supply < 0) return;
        const int plus = net(chain.supply, 0), minus = net(chain.supply, 1);
        const int plusEnd = anodeInside ? resistorEnd : ledEnd, minusEnd = anodeInside ? ledEnd : resistorEnd;
        chain.reversed = plusEnd == minus && minusEnd == plus;
        if (plusEnd != plus && !chain.reversed) return;
        chain.step = 3;
        if (s_.status() == Status::Solved && s_.partBrightness[chain.led] > kLit) chain.step = 4;
    }

    const Snapshot& s_;
    const Layout& layout_;
    const Bench& bench_;
};

/// Free holes for the next step, in words that hold on any board.
class Pointing {
public:
    Pointing(const Snapshot& snapshot, const Chain& chain)
        : layout_(*snapshot.layout),
          bench_(*layout_.bench),
          chain_(chain) {}

    std::vector<Hole> holesFor(int step) const {
        std::vector<Hole> holes;
        if (bench_.boards.empty()) return holes;
        if (step == 0) {
            const std::string& board = bench_.boards.front().id;
            holes = {{board, Line::C, kFirstColumn}, {board, Line::C, kFirstColumn + kUsualSpan}};
        } else if (step == 1) {
            addFree(holes, chain_.resistor, 1);
            if (!holes.empty()) holes.push_back({holes[0].board, holes[0].line, holes[0].number + 1});
        } else if (step == 2 || step == 3) {
            const bool plus = step == 2;
            addOuter(holes, plus);
            if (!holes.empty()) addRail(holes, plus, holes.front());
        }
        std::erase_if(holes, [&](const Hole& hole) { return !holeExists(bench_, hole) || occupantOf(bench_, hole); });
        return holes;
    }

private:
    int net(int part, int lead) const { return layout_.netOfLead[layout_.leadIndex(part, lead)]; }

    void addFree(std::vector<Hole>& holes, int part, int lead) const {
        const auto& hole = bench_.parts[part].leads[lead];
        const auto suits = [&](const Hole& other) { return !occupantOf(bench_, other) && !isCovered(other); };
        if (const auto free = hole ? nearestWhere(bench_, *hole, suits) : std::nullopt) holes.push_back(*free);
    }

    /// Whether a body lies so near that a hand would take hold of it instead.
    bool isCovered(const Hole& hole) const {
        constexpr double kRoomMm = 0.4;
        const Point at = *holeMm(bench_, hole);
        return std::any_of(bench_.parts.begin(), bench_.parts.end(), [&](const Part& part) {
            const auto pose = poseOf(*part.kind->package, leadHolesMm(bench_, part));
            return pose && distanceOutside(pose->body, at) < kRoomMm;
        });
    }

    /// A free hole at the chain's outer end towards plus or minus.
    void addOuter(std::vector<Hole>& holes, bool plus) const {
        if (chain_.led < 0) return;
        for (const int r : {0, 1}) {
            for (const int d : {0, 1}) {
                if (net(chain_.resistor, r) != net(chain_.led, d)) continue;
                const bool atResistor = (d == 0) == plus;
                return atResistor ? addFree(holes, chain_.resistor, 1 - r) : addFree(holes, chain_.led, 1 - d);
            }
        }
    }

    /// A free hole of the supply's rail, the nearest to where the jumper comes from.
    void addRail(std::vector<Hole>& holes, bool plus, const Hole& from) const {
        if (chain_.supply < 0) return;
        const auto& lead = bench_.parts[chain_.supply].leads[plus ? 0 : 1];
        if (!lead) return;
        const Point at = *holeMm(bench_, from);
        std::optional<Hole> best;
        const auto free = [&](const Hole& hole) {
            if (occupantOf(bench_, hole)) return false;
            if (!best || distance(*holeMm(bench_, hole), at) < distance(*holeMm(bench_, *best), at)) best = hole;
            return false;  // looks at all of them
        };
        nearestWhere(bench_, *lead, free);
        if (best) holes.push_back(*best);
    }

    const Layout& layout_;
    const Bench& bench_;
    const Chain& chain_;
};

struct Words {
    const char *title, *text;
};
constexpr Words kWords[] = {
    {"Push a resistor in",
     "Drag one out of the tray to the lit holes. Its two leads must be in different columns: the five holes of a "
     "column are one piece of metal."},
    {"Push an LED in",
     "Its longer leg, the anode, goes into the column where the resistor ends; the other leg into the next column."},
    {"Bring plus", "Drag from a hole in the column of the chain's free end to the plus rail: a red jumper joins them."},
    {"Bring minus",
     "Join the LED's other leg to the minus rail. Then the loop is closed, current flows around it, and the LED "
     "lights."},
    {"Break the loop",
     "It lights! The same current flows in every part of the loop. Flip the lever of the supply: everything stops at "
     "once."},
    {"That was a circuit",
     "A closed loop, something that drives, something that holds back, and something that glows. Now change the "
     "resistor and watch the light."},
};
constexpr const char* kReversed =
    "The loop is closed, but the LED blocks: it is the wrong way round. Select it and press ] to turn it.";
constexpr const char* kResistorBelow =
    "Join the resistor's free end to the minus rail. Then the loop is closed, current flows around it, and the LED "
    "lights.";

}  // namespace

FirstBuildAdvice firstBuildAdvice(const Snapshot& snapshot, int reached) {
    const Chain chain = Judge(snapshot).best();
    int step = chain.step;
    if (reached >= 4) {
        double brightest = 0;
        for (const double brightness : snapshot.partBrightness) brightest = std::max(brightest, brightness);
        const bool dark =
            snapshot.status() == Status::Off || (snapshot.status() == Status::Solved && brightest < kDark);
        step = reached >= kFirstBuildSteps || dark ? kFirstBuildSteps : 4;
    }
    FirstBuildAdvice advice{step, kWords[step].title, kWords[step].text, Pointing(snapshot, chain).holesFor(step)};
    const bool anodeOutside = chain.led >= 0 && step == 3 && !chain.reversed &&
                              snapshot.layout->netOfLead[snapshot.layout->leadIndex(chain.led, 0)] ==
                                  snapshot.layout->netOfLead[snapshot.layout->leadIndex(chain.supply, 0)];
    if (anodeOutside) advice.text = kResistorBelow;
    if (chain.reversed && step == 3) {
        advice.text = kReversed;
        advice.holes.clear();
    }
    return advice;
}

}  // namespace tiepoint
