// The doctor on the far light: what fits, what is asked next, contradictions, heat, two slips; and plants on sound benches never seen.

#include "core/doctor/doctor.h"

#include "core/doctor/flow_chart.h"
#include "core/doctor/observation_words.h"
#include "core/doctor/question_words.h"
#include "examiner/sound_bench.h"
#include "support/doctor_plants.h"
#include "support/far_light.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

namespace tiepoint::test {
namespace {

class FarLight : public testing::Test {
protected:
    FarLight() : doctor_(buildLayout(std::make_shared<const Bench>(farLight()))) {}

    Observation saw(const char* text, const char* hold = "S1") {
        const auto read = readObservation(doctor_.plan(), text, *readHolds(doctor_.plan(), {hold}));
        EXPECT_TRUE(read) << text;
        return *read;
    }
    /// Names of the kinds that fit, with the things that they touch.
    std::set<std::string> told(const Diagnosis& diagnosis) const {
        std::set<std::string> names;
        for (const Weighed& fit : diagnosis.fits) {
            std::string name;
            for (const int slip : fit.suspect->slips)
                name += (name.empty() ? "" : "+") +
                        std::string(doctor_.suspects().slips()[static_cast<std::size_t>(slip)].kind->name);
            for (const std::string& id : fit.suspect->touched) name += " " + id;
            names.insert(name);
        }
        return names;
    }

    Doctor doctor_;
};

TEST_F(FarLight, FirstAsksWhetherItIsBuiltAsPlanned) {
    const Diagnosis diagnosis = doctor_.diagnose({});
    EXPECT_EQ(diagnosis.fits.size(), doctor_.suspects().all().size());
    ASSERT_TRUE(diagnosis.next);
    EXPECT_EQ(diagnosis.next->question.asking, Asking::Built);
    EXPECT_EQ(diagnosis.next->answers.size(), 2u);
}

TEST_F(FarLight, DarkWithPlusAtTheButtonLeavesWhatComesAfter) {
    const std::vector<Observation> seen{saw("D1=dark"), saw("A.c14=5.0")};
    const Diagnosis diagnosis = doctor_.diagnose(seen);
    const std::set<std::string> names = told(diagnosis);
    for (const char* possible :
         {"dead-part S1", "reversed D1", "dead-part D1", "jumper-missing W2", "jumper-missing W3", "broken-jumper W2"})
        EXPECT_TRUE(names.contains(possible)) << possible;
    for (const char* impossible : {"jumper-missing W1", "supply-off PS1", "dead-part R1", "broken-jumper W1"})
        EXPECT_FALSE(names.contains(impossible)) << impossible;
    EXPECT_LT(diagnosis.fits.size() * 2, doctor_.suspects().all().size());
    ASSERT_TRUE(diagnosis.next);
    // Every answer leaves fewer, and together they leave all.
    std::size_t left = 0;
    for (const Reply& answer : diagnosis.next->answers) {
        EXPECT_LT(answer.leaves.size(), diagnosis.fits.size());
        left += answer.leaves.size();
    }
    EXPECT_EQ(left, diagnosis.fits.size());
}

TEST_F(FarLight, FiveVoltsAtTheLightLeaveTheLightAndWhatFollows) {
    const std::set<std::string> before = told(doctor_.diagnose({saw("D1=dark"), saw("A.f22=5.0")}));
    EXPECT_TRUE(before.contains("reversed D1"));
    EXPECT_TRUE(before.contains("jumper-missing W3"));
    EXPECT_FALSE(before.contains("dead-part S1"));
    EXPECT_FALSE(before.contains("jumper-missing W2"));
    const std::set<std::string> after = told(doctor_.diagnose({saw("D1=dark"), saw("A.f22=0")}));
    EXPECT_FALSE(after.contains("reversed D1"));
    EXPECT_TRUE(after.contains("dead-part S1"));
    EXPECT_TRUE(after.contains("jumper-missing W2"));
}

TEST_F(FarLight, TheMetersTenMegohmsCount) {
    // Open behind the light, the meter's own current through it leaves less than the supply's five volts at its cathode.
    for (const Weighed& fit : doctor_.diagnose({saw("D1=dark"), saw("W3=missing")}).fits) {
        const double volts =
            doctor_.foresight().volts(*fit.suspect, *readHolds(doctor_.plan(), {"S1"}), *parseHole("A.f25"), {});
        EXPECT_GT(volts, 3.0);
        EXPECT_LT(volts, 4.2);
    }
}

TEST_F(FarLight, AClickedHoleTellsTheSlipAndItsMend) {
    const Diagnosis diagnosis = doctor_.diagnose({saw("D1=dark"), saw("D1.anode=A.h23"), saw("D1.cathode=A.h25")});
    ASSERT_EQ(diagnosis.fits.size(), 1u);
    EXPECT_FALSE(diagnosis.next);
    const Suspect& found = *diagnosis.fits.front().suspect;
    EXPECT_EQ(doctor_.slipsInWords(found), "D1's anode is in h23, one hole to the right of h22.");
    EXPECT_EQ(doctor_.mendInWords(found), "Put D1's anode into h22.");
    const auto mended = apply(doctor_.suspects().built(found), doctor_.mendOf(found));
    ASSERT_TRUE(mended);
    EXPECT_EQ(mended->bench.parts, doctor_.plan().parts);
    EXPECT_EQ(mended->bench.jumpers, doctor_.plan().jumpers);
}

TEST_F(FarLight, HeatEndsTheQuestions) {
    const std::vector<Observation> seen{saw("D1=hot")};
    const Diagnosis diagnosis = doctor_.diagnose(seen);
    EXPECT_TRUE(diagnosis.switchOff);
    EXPECT_FALSE(diagnosis.next);
    EXPECT_TRUE(doctor_.nextInWords(diagnosis, seen).starts_with("Switch the supply off now"));
    // A tenth of the resistance makes the light too hot; a tenfold one doesn't.
    for (const Weighed& fit : diagnosis.fits) EXPECT_FALSE(fit.suspect->slips.empty());
}

TEST_F(FarLight, ContinuityIsTestedWithTheSupplyOff) {
    const std::set<std::string> silent = told(doctor_.diagnose({saw("A.a8~A.top+7=silent")}));
    EXPECT_TRUE(silent.contains("broken-jumper W1"));
    EXPECT_FALSE(silent.contains("broken-jumper W2"));
    const std::set<std::string> beeps = told(doctor_.diagnose({saw("A.a8~A.top+7=beeps")}));
    EXPECT_FALSE(beeps.contains("broken-jumper W1"));
    EXPECT_TRUE(beeps.contains("broken-jumper W2"));
}

TEST_F(FarLight, AProbeLightServesWithoutAMeter) {
    const std::set<std::string> glows = told(doctor_.diagnose({saw("D1=dark"), saw("A.f22=glows")}));
    EXPECT_TRUE(glows.contains("reversed D1"));
    EXPECT_FALSE(glows.contains("jumper-missing W2"));
    const Diagnosis asked = doctor_.diagnose({saw("D1=dark"), saw("A=as planned")}, Instrument::ProbeLight);
    ASSERT_TRUE(asked.next);
    EXPECT_NE(asked.next->question.asking, Asking::Volts);
}

TEST_F(FarLight, WhatIsSaidToBeAsPlannedIsDoubtedNotForgotten) {
    const Diagnosis unasked = doctor_.diagnose({saw("D1=dark")}),
                    asked = doctor_.diagnose({saw("A=as planned"), saw("D1=dark")});
    EXPECT_EQ(told(unasked), told(asked));
    const auto weight = [&](const Diagnosis& diagnosis, const char* name) {
        double sum = 0;
        for (const Weighed& fit : diagnosis.fits) {
            const bool visible = fit.suspect->isVisible();
            sum += visible == (std::string(name) == "visible") ? fit.weight : 0;
        }
        return sum;
    };
    EXPECT_LT(weight(asked, "visible"), weight(unasked, "visible") / 4);
    EXPECT_DOUBLE_EQ(weight(asked, "hidden"), weight(unasked, "hidden"));
}

TEST_F(FarLight, TwoSlipsAreFoundWhereNoSingleOneFits) {
    // R1 a hundred times too large and D1 the wrong way round: dark, and neither alone agrees with what is seen of both.
    const std::vector<Observation> seen{saw("D1=dark"), saw("R1.resistance=3300"), saw("D1.anode=A.h25"),
                                        saw("D1.cathode=A.h22")};
    const Diagnosis diagnosis = doctor_.diagnose(seen);
    EXPECT_TRUE(diagnosis.pairs);
    ASSERT_FALSE(diagnosis.fits.empty());
    for (const Weighed& fit : diagnosis.fits) {
        EXPECT_EQ(fit.suspect->slips.size(), 2u);
        EXPECT_EQ(fit.suspect->touched, (std::set<std::string>{"D1", "R1"}));
        const auto mended = apply(doctor_.suspects().built(*fit.suspect), doctor_.mendOf(*fit.suspect));
        ASSERT_TRUE(mended);
        EXPECT_EQ(mended->bench.parts, doctor_.plan().parts);
    }
}

TEST_F(FarLight, ContradictionsAreToldWithWhatToDoubt) {
    const std::vector<Observation> seen{saw("D1=lit"),       saw("D1=lit", "none"), saw("A.c14=12"),
                                        saw("A.f22=0"),      saw("PS1=as planned"), saw("R1=as planned"),
                                        saw("S1=as planned")};
    const Diagnosis diagnosis = doctor_.diagnose(seen);
    EXPECT_TRUE(diagnosis.contradiction);
    EXPECT_TRUE(diagnosis.fits.empty());
    EXPECT_FALSE(doctor_.nextInWords(diagnosis, seen).empty());
    const std::vector<Observation> one{saw("D1=lit"), saw("A.c14=12")};
    const Diagnosis doubted = doctor_.diagnose(one);
    if (doubted.contradiction) {
        EXPECT_EQ(doubted.doubted, (std::vector<std::size_t>{1}));
    }
}

TEST_F(FarLight, TheChartEndsInEverySuspectOnce) {
    const FlowChart chart = flowChart(doctor_);
    ASSERT_GT(chart.boxes.size(), 3u);
    EXPECT_LE(chart.depth(), ChartSize{}.mostDepth);
    int ends = 0;
    std::set<int> led;
    for (const ChartBox& box : chart.boxes) {
        EXPECT_FALSE(box.text.empty());
        ends += box.branches.empty();
        for (const ChartBranch& branch : box.branches) EXPECT_TRUE(led.insert(branch.box).second);
    }
    EXPECT_LE(ends, ChartSize{}.mostEnds);
    EXPECT_EQ(led.size() + 1, chart.boxes.size());
}

TEST(DoctorPlants, TheTruthSurvivesOnBenchesNeverSeen) {
    constexpr std::uint64_t kSeed = 31'000'000;
    int plants = 0, questions = 0;
    for (std::uint64_t seed = kSeed; seed < kSeed + 6; ++seed) {
        const Bench bench = examiner::soundBench(seed, 8).bench;
        Doctor doctor(buildLayout(std::make_shared<const Bench>(bench)));
        if (!minusOfFirstSupply(bench) || doctor.suspects().all().size() < 2) continue;
        examiner::Chance chance(seed);
        for (int i = 0; i < 5; ++i) {
            const PlantOutcome outcome = runPlant(doctor, drawTruth(doctor, chance), chance);
            EXPECT_TRUE(outcome.survived) << "seed " << seed << ": " << outcome.story;
            EXPECT_EQ(outcome.apart, 0u) << "seed " << seed << ": " << outcome.story;
            ++plants;
            questions += outcome.questions;
        }
    }
    ASSERT_GT(plants, 20);
    EXPECT_LE(questions, 4 * plants);
}

}  // namespace
}  // namespace tiepoint::test
