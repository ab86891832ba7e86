// A thing that passes nothing although a sound one in its place would: broken inside, or touching badly. What is told is what a meter
// shows, not what is wrong inside; that is for whoever hunts it to find out.

#include "core/findings/figure_words.h"
#include "core/findings/rules.h"
#include "core/findings/trial.h"
#include "core/snapshot/readings.h"
#include "core/words/words.h"

#include <cmath>

namespace tiepoint {
namespace {

/// A part or a jumper of the bench.
struct Thing {
    std::string id;
    int part = -1, jumper = -1;
    Operation replaced;  ///< by a sound one
};

template <class Item>
Item soundItem(Item item) {
    item.condition = Condition::Sound;
    return item;
}

std::vector<Thing> brokenThings(const Bench& bench) {
    std::vector<Thing> things;
    for (const Part& part : bench.parts) {
        if (part.condition == Condition::Sound) continue;
        things.push_back({part.id, bench.partIndex(part.id), -1, ReplacePart{soundItem(part)}});
    }
    for (const Jumper& jumper : bench.jumpers) {
        if (jumper.condition == Condition::Sound) continue;
        things.push_back({jumper.id, -1, bench.jumperIndex(jumper.id), ReplaceJumper{soundItem(jumper)}});
    }
    return things;
}

Figure carriedBy(const Snapshot& snapshot, const Thing& thing) {
    return thing.part >= 0 ? snapshot.shown().through(thing.part).most()
                           : snapshot.shown().jumperCurrent(thing.jumper).magnitude();
}

bool passes(const Snapshot& snapshot, const Thing& thing) {
    if (snapshot.status() != Status::Solved) return false;
    const double ampere = thing.part >= 0 ? currentThrough(snapshot, thing.part).inAmpere
                                          : std::abs(snapshot.jumperCurrent(thing.jumper));
    return ampere > kNoCurrentAmpere;
}

/// Between the two places that the thing is plugged into; unknown where one of them floats or there are more.
Figure voltageAcross(const Snapshot& snapshot, const Thing& thing) {
    const Layout& layout = *snapshot.layout;
    int nets[2];
    if (thing.jumper >= 0) {
        for (int end = 0; end < 2; ++end)
            nets[end] = layout.joints[layout.jumperJoints[thing.jumper][static_cast<std::size_t>(end)]].net;
    } else {
        const int first = layout.firstLead[thing.part];
        if (layout.firstLead[thing.part + 1] - first != 2) return {};
        for (int lead = 0; lead < 2; ++lead) {
            if (layout.holeOfLead[first + lead] < 0) return {};
            nets[lead] = layout.netOfHole(layout.holeOfLead[first + lead]);
        }
    }
    const Figure a = snapshot.shown().volt(nets[0]), b = snapshot.shown().volt(nets[1]);
    return a.isKnown() && b.isKnown() ? (a - b).magnitude() : Figure();
}

std::vector<Hole> holesOf(const Bench& bench, const Thing& thing) {
    if (thing.part >= 0) return holesOf(bench.parts[thing.part]);
    std::vector<Hole> holes;
    for (const JumperEnd& end : bench.jumpers[thing.jumper].ends)
        if (const Hole* hole = std::get_if<Hole>(&end)) holes.push_back(*hole);
    return holes;
}

Suspicion suspicionOf(const Bench& bench, const Thing& thing, const Position& position, const Snapshot& sound) {
    Suspicion found;
    Finding& finding = found.finding;
    finding.severity = Severity::Remark;
    finding.parts = {thing.id};
    finding.holes = holesOf(bench, thing);
    const Figure across = voltageAcross(*position.snapshot, thing);
    const bool stands = across.isKnown() && !across.isZero();
    const std::string current = carriedBy(sound, thing).text();
    finding.text = saidOf(
        stands ? say("finding.broken.voltage", {{"thing", thing.id}, {"voltage", across.text()}, {"current", current}})
               : say("finding.broken", {{"thing", thing.id}, {"current", current}}),
        position);
    if (stands) addFigure(finding, "voltage", across);
    found.proposals.push_back(
        {say("mend.renew", {{"thing", thing.id}}), {say("history.replace", {{"thing", thing.id}}), {thing.replaced}}});
    return found;
}

}  // namespace

Suspicions findBroken(const Examination& examination) {
    const Bench& bench = examination.bench();
    Suspicions all;
    if (isSound(bench)) return all;
    const auto sound = std::make_shared<const Bench>(soundOf(bench));
    for (const Thing& thing : brokenThings(bench)) {
        for (const Position& position : examination.positions()) {
            const auto then = evaluate(sound, *position.snapshot->inputs);
            if (passes(*position.snapshot, thing) || !passes(*then, thing)) continue;
            all.push_back(suspicionOf(bench, thing, position, *then));
            break;
        }
    }
    return all;
}

}  // namespace tiepoint
