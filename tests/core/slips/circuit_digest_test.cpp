// The digest of a circuit, followed through changes, against one made anew of the changed bench, and against the nets themselves.

#include "core/slips/search.h"
#include "slip_benches.h"
#include "support/random_benches.h"

#include <gtest/gtest.h>

#include <map>
#include <random>
#include <set>

namespace tiepoint::test {
namespace {

/// Which leads meet, each by its part and the work it does: the circuit without digests.
using Partition = std::multiset<std::multiset<std::string>>;
Partition partitionOf(const Bench& bench) {
    const auto layout = laidOut(bench);
    std::map<int, std::multiset<std::string>> nets;
    for (int lead = 0; lead < layout->leadCount(); ++lead) {
        const int part = layout->partOfLead(lead);
        const PartKind& kind = *bench.parts[static_cast<std::size_t>(part)].kind;
        std::string end = kind.leads[static_cast<std::size_t>(lead - layout->firstLead[part])].name;
        if (kind.name == "push-button") end = "pair";
        if (kind.name == "resistor" || kind.name == "lamp" || kind.name == "toggle") end = "end";
        const int net = layout->netOfLead[lead];
        nets[net].insert(bench.parts[static_cast<std::size_t>(part)].id + "." + end);
    }
    Partition partition;
    for (auto& [net, leads] : nets) partition.insert(std::move(leads));
    for (const Part& part : bench.parts) {
        if (!hasElements(part.condition)) partition.insert({part.id + " is broken"});
    }
    return partition;
}

/// Random changes of one or two tips, with a jumper more or less now and then; holes may clash, for nets don't mind.
BenchChange anyChange(const Ground& ground, std::mt19937& random) {
    const auto pick = [&](std::size_t count) { return random() % count; };
    BenchChange change;
    std::set<int> taken;
    const auto anyFree = [&] {
        for (;;) {
            const int hole = static_cast<int>(pick(static_cast<std::size_t>(ground.layout().holeCount())));
            if (ground.isFree(hole) && taken.insert(hole).second) return ground.holeAt(hole);
        }
    };
    for (std::size_t moves = 1 + pick(2); moves > 0 && !ground.tips().empty(); --moves) {
        const Tip& tip = ground.tips()[pick(ground.tips().size())];
        const BenchChange more = ground.moved(tip, anyFree());
        const auto again = [&](const auto& list, const auto& each) {
            return std::ranges::any_of(list, [&](const auto& other) { return idsOf(more).front() == each(other); });
        };
        if (again(change.leads, [](const PlacedLead& l) { return l.part; }) ||
            again(change.ends, [](const PlacedEnd& e) { return e.jumper; }))
            continue;
        change.leads.insert(change.leads.end(), more.leads.begin(), more.leads.end());
        change.ends.insert(change.ends.end(), more.ends.begin(), more.ends.end());
    }
    if (pick(3) == 0) change.added = ground.joining({{anyFree(), anyFree()}}).added;
    if (pick(3) == 0 && !ground.bench().jumpers.empty()) {
        const Jumper& jumper = ground.bench().jumpers[pick(ground.bench().jumpers.size())];
        const bool moves = std::ranges::any_of(change.ends, [&](const PlacedEnd& e) { return e.jumper == jumper.id; });
        if (!moves) change.removed.push_back(jumper);
    }
    if (pick(4) == 0 && !ground.bench().parts.empty()) {
        const Part& part = ground.bench().parts[pick(ground.bench().parts.size())];
        change.conditions.push_back({part.id, static_cast<Condition>(pick(4))});
    }
    if (pick(4) == 0 && !ground.bench().jumpers.empty()) {
        const Jumper& jumper = ground.bench().jumpers[pick(ground.bench().jumpers.size())];
        const bool goes = std::ranges::any_of(change.removed, [&](const Jumper& gone) { return gone.id == jumper.id; });
        if (!goes) change.conditions.push_back({jumper.id, static_cast<Condition>(pick(4))});
    }
    return change;
}

/// The change carried out whether or not its parts fit.
Bench carriedOut(Bench bench, const BenchChange& change) {
    for (const PlacedLead& each : change.leads)
        bench.parts[static_cast<std::size_t>(bench.partIndex(each.part))].leads[static_cast<std::size_t>(each.lead)] =
            each.to;
    for (const PlacedEnd& each : change.ends)
        bench.jumpers[static_cast<std::size_t>(bench.jumperIndex(each.jumper))]
            .ends[static_cast<std::size_t>(each.end)] = each.to;
    for (const SetCondition& each : change.conditions) {
        const int part = bench.partIndex(each.id);
        if (part >= 0)
            bench.parts[static_cast<std::size_t>(part)].condition = each.to;
        else
            bench.jumpers[static_cast<std::size_t>(bench.jumperIndex(each.id))].condition = each.to;
    }
    for (const Jumper& gone : change.removed)
        std::erase_if(bench.jumpers, [&](const Jumper& jumper) { return jumper.id == gone.id; });
    bench.jumpers.insert(bench.jumpers.end(), change.added.begin(), change.added.end());
    return bench;
}

TEST(CircuitDigest, FollowsChangesAsIfMadeAnew) {
    std::mt19937 random(2041);
    int same = 0, other = 0;
    for (unsigned seed = 1; seed <= 60; ++seed) {
        Bench bench = placedAtRandom(seed, 4 + static_cast<int>(seed % 14));
        for (Part& part : bench.parts) part.condition = random() % 8 == 0 ? Condition::DryContact : Condition::Sound;
        for (Jumper& jumper : bench.jumpers)
            jumper.condition = random() % 8 == 0 ? Condition::OpenInside : Condition::Sound;
        const Ground ground(laidOut(bench));
        const Partition before = partitionOf(bench);
        for (int i = 0; i < 60; ++i) {
            const BenchChange change = anyChange(ground, random);
            std::size_t work = 0;
            const std::uint64_t followed = ground.circuit().after(change, work);
            const Bench after = carriedOut(bench, change);
            ASSERT_EQ(followed, digestOfCircuit(after)) << "seed " << seed << ", change " << i;
            const bool isSame = partitionOf(after) == before;
            ASSERT_EQ(followed == ground.circuit().now(), isSame) << "seed " << seed << ", change " << i;
            (isSame ? same : other) += 1;
        }
    }
    EXPECT_GT(same, 20);
    EXPECT_GT(other, 1000);
}

TEST(CircuitDigest, TellsSettingsApart) {
    const Bench bench = compactBench("half; PS1 top+3 bottom-3 5; R1 c8 c14 330; W1 top+7 a8 red");
    const Ground ground(laidOut(bench));
    std::size_t work = 0;
    BenchChange change;
    change.figures.push_back({"R1", false, 0, 3300});
    const auto after = apply(bench, editOf(bench, change, "Change"));
    ASSERT_TRUE(after);
    EXPECT_EQ(ground.circuit().after(change, work), digestOfCircuit(after->bench));
    EXPECT_NE(ground.circuit().after(change, work), ground.circuit().now());
}

TEST(Ground, JudgesWhatCanBeBuiltAsTheWholeBenchDoes) {
    std::mt19937 random(77);
    int built = 0, refused = 0, stricter = 0;
    for (unsigned seed = 101; seed <= 140; ++seed) {
        const Bench bench = placedAtRandom(seed, 16);
        const Ground ground(laidOut(bench));
        for (int i = 0; i < 60; ++i) {
            const Tip& tip = ground.tips()[random() % ground.tips().size()];
            const Hole from = ground.holeAt(tip.hole);
            Hole to = from;
            to.number += static_cast<int>(random() % 7) - 3;
            if (!isRail(from.line)) to.line = static_cast<Line>(random() % kRowCount);
            if (ground.holeIndex(to) < 0) continue;
            const BenchChange change = ground.moved(tip, to);
            const bool whole = !refusalOfChange(bench, carriedOut(bench, change));
            const bool near = ground.canBuild(change);
            EXPECT_TRUE(whole || !near) << "seed " << seed << ": " << ground.idOf(tip) << " into " << toString(to);
            stricter += whole && !near;
            (whole ? built : refused) += 1;
        }
    }
    EXPECT_GT(built, 300);
    EXPECT_GT(refused, 300);
    EXPECT_LE(stricter, built / 100);
}

}  // namespace
}  // namespace tiepoint::test
