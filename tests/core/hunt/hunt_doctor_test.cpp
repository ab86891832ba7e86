// The doctor at a board with a hunt's slip: asked of the target, told lights and readings of the bench that hides the slip, it comes to what
// was planted. Readings are solved and err as a meter does; nobody looks how things stand.

#include "core/hunt/hunt.h"
#include "examiner/sound_bench.h"
#include "support/compact_bench.h"
#include "support/doctor_plants.h"

#include <gtest/gtest.h>

namespace tiepoint::test {
namespace {

constexpr const char* kHuntedTargets[] = {
    "half; PS1 top+3 bottom-3 5; S1 e5; R1 c16 c21 330; D1 h21 h24 red; W1 top+4 a5 red; W2 d7 d16 blue; "
    "W4 d21 g21 green; W3 j24 bottom-20 black",
    "half; PS1 top+3 bottom-3 5; R1 c8 c14 330; D1 e14 f14 red; S1 h18; W1 top+7 a8 red; W2 j14 j18 blue; W3 j20 "
    "bottom-18 black",
};

const Suspect* suspectOf(const Doctor& doctor, const Slip& planted) {
    const SuspectList& list = doctor.suspects();
    for (const Suspect& each : list.all()) {
        if (each.slips.size() != 1) continue;
        const Slip& slip = list.slips()[static_cast<std::size_t>(each.slips.front())];
        if (slip.kind == planted.kind && slip.circuit == planted.circuit && slip.ids() == planted.ids()) return &each;
    }
    return nullptr;
}

TEST(HuntDoctor, FindsWhatIsPlantedFromReadingsAlone) {
    constexpr int kHunts = 6, kMostQuestions = 12;
    std::vector<std::shared_ptr<const Bench>> targets;
    for (const char* text : kHuntedTargets) targets.push_back(std::make_shared<const Bench>(compactBench(text)));
    targets.push_back(std::make_shared<const Bench>(examiner::soundBench(7003, 6).bench));
    PlantRules rules;
    rules.eye = false;
    rules.mostQuestions = kMostQuestions;
    examiner::Chance chance(20);
    int found = 0;
    for (const auto& target : targets) {
        const auto set = makeHunts(target, kHunts, 3);
        if (!set.ok()) continue;
        Doctor doctor(buildLayout(target));
        for (const Plant& plant : set->hunts) {
            const Suspect* truth = suspectOf(doctor, plant.slip);
            ASSERT_NE(truth, nullptr) << slipInWords(*target, plant.slip);
            const PlantOutcome outcome = runPlant(doctor, *truth, chance, rules);
            EXPECT_TRUE(outcome.noticed) << outcome.story;
            EXPECT_TRUE(outcome.survived) << outcome.story;
            EXPECT_TRUE(outcome.finished) << outcome.story;
            EXPECT_EQ(outcome.apart, 0u) << outcome.story;
            ++found;
        }
    }
    EXPECT_GE(found, 2 * kHunts);
}

}  // namespace
}  // namespace tiepoint::test
