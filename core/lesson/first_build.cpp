#include "core/lesson/first_build.h"

#include "core/bench/resolve.h"
#include "core/bench/table.h"
#include "core/course/shipped.h"
#include "core/edit/holes.h"
#include "core/edit/placement.h"
#include "core/lesson/first_slips.h"
#include "core/parts/outline.h"
#include "core/words/words.h"

#include <algorithm>
#include <array>
#include <optional>

namespace tiepoint {
namespace {

constexpr int kFirstColumn = 8, kUsualSpan = 5;

/// Free holes for the next step, in words that hold on any board.
class Pointing {
public:
    Pointing(const Snapshot& snapshot, const FirstChain& chain)
        : layout_(*snapshot.layout),
          bench_(*layout_.bench),
          chain_(chain) {}

    std::vector<Hole> holesFor(int step) const {
        std::vector<Hole> holes;
        if (bench_.boards.empty()) return holes;
        if (step == 0) return forResistor();
        if (step == 1) return forLed();
        if (step == 2 || step == 3) return forJumper(step == 2);
        return holes;
    }

private:
    int net(int part, int lead) const { return layout_.netOfLead[layout_.leadIndex(part, lead)]; }

    /// Whether a part can be put there by hand, its second leg into metal where nothing is yet.
    bool fits(const PartKind& kind, const Hole& first, const Hole& second) const {
        if (!holeExists(bench_, first) || !holeExists(bench_, second) || !isEmpty(second)) return false;
        Part part = makePart(kind, freeId(bench_, kind.prefix));
        part.leads = {first, second};
        return !refusal(bench_, part);
    }
    bool isEmpty(const Hole& hole) const {
        const int strip = layout_.stripOfHole[layout_.holeIndex(hole)];
        return std::ranges::none_of(layout_.joints, [&](const Joint& joint) {
            return joint.hole >= 0 && layout_.stripOfHole[joint.hole] == strip;
        });
    }

    /// From the anode of an LED that is there already; else the first place along a row.
    std::vector<Hole> forResistor() const {
        const PartKind& kind = usualResistor();
        if (chain_.led >= 0) {
            const auto& leads = bench_.parts[chain_.led].leads;
            for (const int away : {-kUsualSpan, kUsualSpan}) {
                const auto from = leads[0] ? nearestFreeInStrip(bench_, *leads[0]) : std::nullopt;
                if (!from || isRail(from->line)) continue;
                const Hole to{from->board, from->line, from->number + away};
                if (fits(kind, *from, to)) return {*from, to};
            }
        }
        for (const Board& board : bench_.boards) {
            for (const Line row : {Line::C, Line::H, Line::A, Line::J}) {
                for (int column = 0; column < board.kind->columns; ++column) {
                    const Hole from{board.id, row, (column + kFirstColumn - 1) % board.kind->columns + 1};
                    const Hole to{board.id, row, from.number + kUsualSpan};
                    if (isEmpty(from) && fits(kind, from, to)) return {from, to};
                }
            }
        }
        return {};
    }

    /// Beside the resistor, the longer leg in its column.
    std::vector<Hole> forLed() const {
        if (chain_.led >= 0) return {};  // there is one: where it belongs is told with what is wrong
        for (const int lead : {1, 0}) {
            const auto& end = bench_.parts[chain_.resistor].leads[lead];
            if (!end || isRail(end->line)) continue;
            for (const int away : {1, -1}) {
                std::optional<Hole> anode;
                const auto suits = [&](const Hole& hole) {
                    return !isCovered(hole) && fits(usualLight(), hole, {hole.board, hole.line, hole.number + away});
                };
                if ((anode = nearestWhere(bench_, *end, suits)))
                    return {*anode, {anode->board, anode->line, anode->number + away}};
            }
        }
        return {};
    }

    /// From the chain's outer end to the supply's rail: the first free hole from which a jumper can lie there.
    std::vector<Hole> forJumper(bool plus) const {
        std::vector<Hole> first;
        for (const Hole& outer : freeAtOuter(plus)) {
            std::vector<Hole> holes{outer};
            addRail(holes, plus, outer);
            if (first.empty()) first = holes;
            if (holes.size() < 2) continue;
            Jumper jumper;
            jumper.id = freeId(bench_, "W");
            jumper.ends = {holes[0], holes[1]};
            if (!refusal(bench_, jumper)) return holes;
        }
        return first;
    }

    /// Free holes of the strip of a leg that no body covers, the nearest to the leg first.
    std::vector<Hole> freeBeside(int part, int lead) const {
        std::vector<Hole> free;
        const auto& leg = bench_.parts[part].leads[lead];
        if (!leg) return free;
        nearestWhere(bench_, *leg, [&](const Hole& other) {
            if (!occupantOf(bench_, other) && !isCovered(other)) free.push_back(other);
            return false;  // all of them
        });
        const Point at = *holeMm(bench_, *leg);
        std::ranges::stable_sort(free, {}, [&](const Hole& other) { return distance(*holeMm(bench_, other), at); });
        return free;
    }

    /// Whether a body lies so near that a hand would take hold of it instead.
    bool isCovered(const Hole& hole) const {
        constexpr double kRoomMm = 0.4;
        const Point at = *holeMm(bench_, hole);
        return std::any_of(bench_.parts.begin(), bench_.parts.end(), [&](const Part& part) {
            const auto pose = poseOf(packageOf(part), leadHolesMm(bench_, part));
            return pose && distanceOutside(pose->body, at) < kRoomMm;
        });
    }

    /// At the chain's outer end towards plus or minus.
    std::vector<Hole> freeAtOuter(bool plus) const {
        if (chain_.resistorLead < 0) return {};
        return plus == chain_.anodeInside ? freeBeside(chain_.resistor, chain_.resistorLead)
                                          : freeBeside(chain_.led, chain_.ledLead);
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
    const FirstChain& chain_;
};

/// The step whose claims say how far the chain has come, and don't hold yet; `until` where all before it do.
int stepToDo(const Lesson& lesson, const Snapshot& snapshot, int from, int until) {
    for (int step = from; step < until; ++step) {
        for (const Predicate& claim : lesson.steps[static_cast<std::size_t>(step)].then) {
            if (claim.form->takes == PredicateTakes::Stage && !judge(claim, snapshot).holds) return step;
        }
    }
    return until;
}

}  // namespace

const Lesson& firstBuildLesson() { return *shippedLessons().front().lesson; }

FirstBuildAdvice firstBuildAdvice(const Snapshot& snapshot, int reached) {
    const Lesson& lesson = firstBuildLesson();
    const FirstChain chain = firstChain(snapshot);
    constexpr int kLast = kFirstBuildSteps - 1;  // breaks what was built: it counts only once there was light
    const int step = reached >= kFirstBuildSteps ? kFirstBuildSteps
                     : reached == kLast          ? stepToDo(lesson, snapshot, kLast, kFirstBuildSteps)
                                                 : stepToDo(lesson, snapshot, 0, kLast);
    if (step < kLast) {
        if (const auto slip = firstSlip(snapshot, chain))
            return {step, slip->headline, slip->reason, slip->action, slip->holes, slip->mend, slip->now, slip->then};
    }
    const bool resistorBelow = step == 3 && !chain.anodeInside;
    return {step,
            lesson.steps[static_cast<std::size_t>(step)].caption,
            resistorBelow ? say("lesson.minus.resistorBelow") : lesson.steps[static_cast<std::size_t>(step)].note,
            {},
            Pointing(snapshot, chain).holesFor(step)};
}

}  // namespace tiepoint
