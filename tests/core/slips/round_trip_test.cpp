// What is made is found again: every forward slip of a sound bench, undone by one of the mends of the slipped bench, up to the same circuit.

#include "core/snapshot/lit.h"
#include "core/snapshot/snapshot.h"
#include "slip_benches.h"
#include "support/random_benches.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

namespace tiepoint::test {
namespace {

struct Count {
    int made = 0, found = 0;
    int lost() const { return made - found; }
    double share() const { return made == 0 ? 1 : static_cast<double>(found) / made; }
};
using KindCounts = std::map<const SlipKind*, Count>;

/// Whether one of the mends brings back the circuit.
bool bringsBack(const std::vector<tiepoint::Slip>& mends, const Bench& slipped, std::uint64_t circuit) {
    return std::ranges::any_of(mends, [&](const tiepoint::Slip& mend) {
        if (mend.circuit == circuit) return true;
        if (mend.kind->name != "rail-halves") return false;  // its circuit is known only once it is made
        const auto mended = apply(slipped, editOf(slipped, mend));
        return mended && digestOfCircuit(mended->bench) == circuit;
    });
}

void countFound(const Bench& bench, const SlipKind& kind, KindCounts& counts) {
    const Ground ground(laidOut(bench));
    for (const tiepoint::Slip& slip : slips(kind, ground)) {
        const auto slipped = apply(bench, editOf(bench, slip));
        ASSERT_TRUE(slipped);
        const Ground after(laidOut(slipped->bench));
        ++counts[&kind].made;
        if (bringsBack(mends(kind, after), slipped->bench, ground.circuit().now()))
            ++counts[&kind].found;
        else if (counts[&kind].made - counts[&kind].found <= 3)
            std::printf("not found again: %s\n", slipInWords(bench, slip).c_str());
    }
}

void expectFound(const KindCounts& counts) {
    for (const SlipKind* kind : slipKinds()) {
        const auto count = counts.find(kind);
        if (count == counts.end()) continue;
        std::printf("%-16s %5d of %5d\n", std::string(kind->name).c_str(), count->second.found, count->second.made);
        // Of a kind that isn't symmetric one in twenty, rounded up, may have no mend: a rail that is full takes no jumper.
        const double most = kind->symmetric ? 0 : std::ceil(0.05 * count->second.made);
        EXPECT_LE(count->second.lost(), most) << kind->name;
    }
}

TEST(SlipRoundTrip, SlipsOfSoundBenchesAreFoundAgain) {
    KindCounts counts;
    for (const auto& [name, bench] : allSoundBenches()) {
        SCOPED_TRACE(name);
        for (const SlipKind* kind : slipKinds()) countFound(bench, *kind, counts);
    }
    // Parts that look alike stand on other benches.
    for (const char* name : {"dusk-light", "signal-lantern"}) {
        SCOPED_TRACE(name);
        auto read = readBenchFile(std::string(TIEPOINT_SOURCE_DIR "/resources/benches/") + name + ".bench.json");
        countFound(std::move(read).value().bench, *findSlipKind("look-alike-type"), counts);
    }
    EXPECT_EQ(counts.size(), slipKinds().size());
    expectFound(counts);
}

TEST(SlipRoundTrip, SlipsOfRandomBenchesAreFoundAgain) {
    KindCounts counts;
    for (unsigned seed = 1; seed <= 20; ++seed) {
        SCOPED_TRACE(seed);
        const Bench bench = placedAtRandom(seed, 4 + static_cast<int>(seed % 12));
        for (const SlipKind* kind : slipKinds()) countFound(bench, *kind, counts);
    }
    EXPECT_GE(counts.size(), slipKinds().size() - 2);
    expectFound(counts);
}

/// The lights that are not as they should be: those of another brightness, by the solve.
std::vector<std::string> lightsOtherThan(const Bench& sound, const Bench& slipped) {
    std::vector<std::string> others;
    const auto before = evaluate(std::make_shared<const Bench>(sound));
    const auto after = evaluate(std::make_shared<const Bench>(slipped));
    for (int part = 0; part < static_cast<int>(sound.parts.size()); ++part) {
        if (!sound.parts[part].kind->emitsLight) continue;
        const bool lit = isLit(*before, part);
        if (lit && !isLit(*after, part)) others.push_back(sound.parts[part].id);
    }
    return others;
}

TEST(SlipRoundTrip, ADarkLightLeadsToTheSlipAmongTwoHundredMends) {
    Count all;
    std::map<std::string_view, Count> byKind;
    for (const auto& [name, bench] : allSoundBenches()) {
        SCOPED_TRACE(name);
        const Ground ground(laidOut(bench));
        for (const tiepoint::Slip& slip : allSlips(ground, 200)) {
            const auto slipped = apply(bench, editOf(bench, slip));
            ASSERT_TRUE(slipped);
            const auto dark = lightsOtherThan(bench, slipped->bench);
            if (dark.empty()) continue;
            const Ground after(laidOut(slipped->bench));
            const auto found = allMends(after, Symptom{{dark.front()}}, 200);
            EXPECT_LE(found.size(), 200u);
            const bool back = bringsBack(found, slipped->bench, ground.circuit().now());
            for (Count* count : {&all, &byKind[slip.kind->name]}) {
                ++count->made;
                count->found += back;
            }
        }
    }
    for (const auto& [name, count] : byKind)
        std::printf("%-16s %5d of %5d\n", std::string(name).c_str(), count.found, count.made);
    EXPECT_GT(all.made, 500);
    EXPECT_GE(all.share(), 0.97);
}

TEST(Slips, OfAllKindsComeTheCommonestFirstAndEachCircuitOnce) {
    for (const auto& [name, bench] : harbourBenches()) {
        SCOPED_TRACE(name);
        const Ground ground(laidOut(bench));
        for (const auto& list : {allSlips(ground, 60), allMends(ground, {}, 60)}) {
            EXPECT_FALSE(list.empty());
            EXPECT_LE(list.size(), 60u);
            std::set<std::uint64_t> circuits;
            double weight = 1e9;
            int away = 0;
            for (const tiepoint::Slip& slip : list) {
                EXPECT_TRUE(circuits.insert(slip.circuit).second);
                EXPECT_NE(slip.circuit, ground.circuit().now());
                EXPECT_LE(slip.weight, weight);
                EXPECT_TRUE(slip.weight < weight || slip.away >= away);
                weight = slip.weight;
                away = slip.away;
            }
        }
    }
}

TEST(Slips, StandInTheSameOrderEachTime) {
    const Bench bench = placedAtRandom(5, 14);
    const auto told = [&] {
        const Ground ground(laidOut(bench));
        std::vector<std::string> words;
        for (const tiepoint::Slip& slip : allSlips(ground, 500)) words.push_back(slipInWords(bench, slip));
        for (const tiepoint::Slip& slip : allMends(ground, {}, 500)) words.push_back(mendInWords(bench, slip));
        return words;
    };
    EXPECT_EQ(told(), told());
}

TEST(Slips, OfWhatChangesNothingThereAreNone) {
    // Along its column a leg may stand in any hole, and a resistor either way round.
    const Bench bench = compactBench(
        "half; PS1 top+3 bottom-3 5; R1 c8 c14 330; D1 e14 f14 red; W1 top+7 a8 red; W2 j14 bottom-13 black");
    const Ground ground(laidOut(bench));
    for (const tiepoint::Slip& slip : slips(*findSlipKind("reversed"), ground)) EXPECT_NE(slip.ids().front(), "R1");
    for (const tiepoint::Slip& slip : slips(*findSlipKind("jumper-missing"), ground))
        EXPECT_FALSE(slip.wrong.removed.empty());
}

}  // namespace
}  // namespace tiepoint::test
