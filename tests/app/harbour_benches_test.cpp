// The harbour benches: each does what its title promises, is sound, tidy and placed as hands could place it.

#include "app/run_program.h"
#include "core/base/embedded.h"
#include "core/bench/bench_file.h"
#include "core/bench/validate.h"
#include "core/edit/edit.h"
#include "core/edit/placement.h"
#include "core/findings/finding.h"
#include "core/snapshot/runner.h"
#include "core/snapshot/sounds.h"

#include <gtest/gtest.h>

#include <filesystem>

namespace tiepoint::test {
namespace {

/// Below this a lamp counts as dark, above as lit; the harbour benches leave a wide gap between the two.
constexpr double kDark = 0.01;
constexpr double kLit = 0.2;

const std::vector<std::string> kNames{
    "beacon-lamp",    "lock-gate",     "quay-bell-lamp",   "fairway-dimmer", "two-way-stair-lamp", "three-buoys",
    "gangway",        "dark-beacon",   "ferry-cabin",      "dusk-light",     "stair-lamp",         "solar-buoy",
    "signal-lantern", "frost-warning", "harbour-entrance", "steady-five",    "ballast-tank",       "harbour-fan"};
/// What never rests: judged in time.
const std::vector<std::string> kRestless{"flashing-beacon", "fog-signal"};

Bench load(const std::string& name) {
    auto read = readBenchFile(harbourBench(name));
    EXPECT_TRUE(read.ok()) << (read.ok() ? "" : read.error().oneLine());
    EXPECT_TRUE(read->warnings.empty());
    return std::move(read).value().bench;
}

double brightnessOf(const Bench& bench, const std::string& light, std::initializer_list<const char*> held = {}) {
    Inputs inputs;
    for (const char* id : held) inputs.held.insert(id);
    const auto snapshot = evaluate(std::make_shared<const Bench>(bench), inputs);
    EXPECT_EQ(snapshot->status(), Status::Solved);
    return snapshot->brightness(bench.partIndex(light));
}

Bench edited(const Bench& bench, const Edit& edit) {
    auto applied = apply(bench, edit);
    EXPECT_TRUE(applied.ok()) << (applied.ok() ? "" : applied.error().message);
    return std::move(applied).value().bench;
}

class HarbourBench : public testing::TestWithParam<std::string> {};

/// What is found at rest and with every cap held, by rule.
std::vector<std::string> rulesOf(const Bench& bench) {
    Inputs all;
    for (const Part& part : bench.parts) {
        if (part.kind->hasCap) all.held.insert(part.id);
    }
    std::vector<std::string> rules;
    for (const Inputs& inputs : {Inputs{}, all}) {
        const auto snapshot = evaluate(std::make_shared<const Bench>(bench), inputs);
        EXPECT_EQ(snapshot->status(), Status::Solved);
        for (const Finding& finding : inspect(*snapshot).findings) rules.push_back(finding.rule);
    }
    return rules;
}

// The dark beacon is broken on purpose, in one way only.
TEST_P(HarbourBench, SolvesAndNothingElseIsWrong) {
    const std::vector<std::string> none, oneHoleOff{"one-hole-off", "one-hole-off"};
    EXPECT_EQ(rulesOf(load(GetParam())), GetParam() == "dark-beacon" ? oneHoleOff : none);
}

TEST_P(HarbourBench, HandsCouldPlaceIt) {
    const Bench bench = load(GetParam());
    EXPECT_TRUE(validate(bench).ok());
    for (const Part& part : bench.parts) {
        EXPECT_TRUE(overlapping(bench, part).empty()) << part.id;
        EXPECT_EQ(refusal(bench, part), std::nullopt) << part.id;
        for (std::size_t lead = 0; lead < part.leads.size(); ++lead) {
            EXPECT_TRUE(part.leads[lead].has_value()) << part.id << " has a lead that hangs";
        }
    }
    for (const Jumper& jumper : bench.jumpers) EXPECT_EQ(refusal(bench, jumper), std::nullopt) << jumper.id;
}

// Common practice: red leaves plus and black comes home to minus; between them any other colour.
TEST_P(HarbourBench, JumpersWearTheColoursOfTheRails) {
    for (const Jumper& jumper : load(GetParam()).jumpers) {
        std::string expected;
        for (const JumperEnd& end : jumper.ends) {
            const Hole& hole = std::get<Hole>(end);
            if (hole.line == Line::TopPlus || hole.line == Line::BottomPlus) expected = "red";
            if (hole.line == Line::TopMinus || hole.line == Line::BottomMinus) expected = "black";
        }
        const std::string_view colour = jumperColours()[jumper.colour].name;
        if (expected.empty()) {
            EXPECT_TRUE(colour != "red" && colour != "black") << jumper.id;
        } else {
            EXPECT_EQ(colour, expected) << jumper.id;
        }
    }
}

TEST_P(HarbourBench, FileIsAsTheProgramWritesIt) {
    EXPECT_EQ(writeBench(load(GetParam())), readFile(harbourBench(GetParam())));
}

TEST_P(HarbourBench, IsEmbedded) {
    const std::string name = "benches/" + GetParam() + ".bench.json";
    bool found = false;
    for (const EmbeddedFile& file : embeddedFiles()) {
        if (file.name == name) found = file.text == readFile(harbourBench(GetParam()));
    }
    EXPECT_TRUE(found);
}

INSTANTIATE_TEST_SUITE_P(Harbour, HarbourBench, testing::ValuesIn(kNames), [](const auto& each) {
    std::string name = each.param;
    std::erase(name, '-');
    return name;
});

TEST(Harbour, HasNoOtherBenches) {
    std::size_t count = 0;
    for (const auto& entry : std::filesystem::directory_iterator(TIEPOINT_SOURCE_DIR "/resources/benches")) {
        count += entry.path().string().ends_with(".bench.json") ? 1 : 0;
    }
    EXPECT_EQ(count, kNames.size() + kRestless.size());
}

Bench inLight(Bench bench, double lux) {
    if (!bench.surroundings) bench.surroundings.emplace();
    bench.surroundings->lightLux = lux;
    return bench;
}

TEST(Harbour, DuskLightComesOnWhenItGetsDark) {
    const Bench bench = load("dusk-light");
    EXPECT_GT(brightnessOf(bench, "D1"), kLit) << "as the file has it: dusk";
    EXPECT_GT(brightnessOf(inLight(bench, 0), "D1"), kLit);
    EXPECT_LT(brightnessOf(inLight(bench, 300), "D1"), kDark);
    EXPECT_LT(brightnessOf(inLight(bench, 100e3), "D1"), kDark);
}

TEST(Harbour, SolarBuoyNeedsTheSun) {
    const Bench bench = load("solar-buoy");
    EXPECT_GT(brightnessOf(bench, "D1"), kLit);
    EXPECT_LT(brightnessOf(inLight(bench, 300), "D1"), kLit);
    EXPECT_EQ(evaluate(std::make_shared<const Bench>(inLight(bench, 0)))->status(), Status::Off);
}

TEST(Harbour, SignalLanternMixesThreeColours) {
    const Bench bench = load("signal-lantern");
    EXPECT_LT(brightnessOf(bench, "D1"), kDark);
    for (const char* key : {"S1", "S2", "S3"}) EXPECT_GT(brightnessOf(bench, "D1", {key}), kLit) << key;
    Inputs all;
    all.held = {"S1", "S2", "S3"};
    const auto s = evaluate(std::make_shared<const Bench>(bench), all);
    const int part = bench.partIndex("D1"), first = s->emitters->firstOfPart[part];
    ASSERT_EQ(s->emitters->firstOfPart[part + 1] - first, 3);
    for (int colour = 0; colour < 3; ++colour) EXPECT_GT(s->emitterBrightness[first + colour], kLit);
}

TEST(Harbour, FrostWarningComesOnInTheCold) {
    const auto at = [](double celsius) {
        Bench bench = load("frost-warning");
        bench.surroundings->temperatureCelsius = celsius;
        return brightnessOf(bench, "D1");
    };
    EXPECT_GT(at(-2), kLit);
    EXPECT_LT(at(25), kDark);
}

TEST(Harbour, HarbourEntranceIsLitAtNight) {
    const Bench bench = load("harbour-entrance");
    EXPECT_GT(brightnessOf(bench, "D1"), kLit);
    EXPECT_LT(brightnessOf(inLight(bench, 300), "D1"), kDark);
}

/// BZX79-C5V1 (Yongerjia): 4.8 to 5.4 V.
TEST(Harbour, SteadyFiveHoldsItsVoltage) {
    const Bench bench = load("steady-five");
    for (const double condition : {0.0, 1.0, 2.0}) {
        Bench with = bench;
        with.parts[bench.partIndex("PS1")].values[0] = condition;
        const auto s = evaluate(std::make_shared<const Bench>(with));
        const int zener = bench.partIndex("D2");
        const double volt =
            s->leadVoltage(s->layout->leadIndex(zener, 1)) - s->leadVoltage(s->layout->leadIndex(zener, 0));
        EXPECT_GT(volt, 4.8) << condition;
        EXPECT_LT(volt, 5.4) << condition;
    }
}

/// The brightness of a light every tenth of a second, S1 pressed for the first 0.7 s where it says so.
std::vector<double> lightInTime(const Bench& bench, double untilSecond, double pressedSecond = 0) {
    const auto runner = makeRunner();
    Inputs inputs;
    if (pressedSecond > 0) inputs.presses = {{"S1", 0, pressedSecond}};
    runner->setInputs(inputs);
    runner->setBench(1, std::make_shared<const Bench>(bench));
    std::vector<double> seen;
    for (int tenth = 1; tenth <= untilSecond * 10; ++tenth) {
        runner->advanceTo(tenth / 10.0);
        EXPECT_EQ(runner->snapshot()->status(), Status::Solved) << runner->snapshot()->solution.reason;
        seen.push_back(runner->snapshot()->brightness(bench.partIndex("D1")));
    }
    return seen;
}

/// A beat of 464 Hz by the data sheet's formula, 1.44 / ((1 k + 2 x 15 k) 100 nF); 2.25 % is its stated accuracy.
TEST(Harbour, FogSignalSounds) {
    const auto bench = std::make_shared<const Bench>(load("fog-signal"));
    const auto runner = makeRunner();
    runner->setBench(1, bench);
    runner->advanceTo(0.3);
    ASSERT_EQ(runner->snapshot()->status(), Status::Solved) << runner->snapshot()->solution.reason;
    EXPECT_NEAR(pitchOf(*runner->snapshot(), bench->partIndex("BZ1")), 464.5, 0.0225 * 464.5);
}

TEST(Harbour, FanTurnsWhileItsButtonIsPressed) {
    const auto bench = std::make_shared<const Bench>(load("harbour-fan"));
    const auto runner = makeRunner();
    Inputs inputs;
    inputs.presses = {{"S1", 0.5, 3}};
    runner->setInputs(inputs);
    runner->setBench(1, bench);
    const auto speedAt = [&](double second) {
        runner->advanceTo(second);
        return runner->state().of("MO1", Memory::Speed);
    };
    EXPECT_NEAR(speedAt(0.4), 0, 1);
    EXPECT_GT(speedAt(2.9), 300);
    EXPECT_LT(speedAt(20), 10);
}

TEST(Harbour, BallastTankKeepsItsChargeUntilItIsLetOut) {
    const auto bench = std::make_shared<const Bench>(load("ballast-tank"));
    const auto runner = makeRunner();
    Inputs inputs;
    inputs.presses = {{"S1", 0, 4}, {"S2", 6, 6.3}};
    runner->setInputs(inputs);
    runner->setBench(1, bench);
    const int light = bench->partIndex("D1");
    runner->advanceTo(5.9);
    EXPECT_GT(runner->state().of("C1", Memory::Voltage), 4.8);
    EXPECT_LT(runner->snapshot()->brightness(light), kDark);
    runner->advanceTo(6.05);
    runner->snapshot();
    runner->advanceTo(6.1);
    EXPECT_GT(runner->snapshot()->brightness(light), kLit);
}

/// 100 uF through 100 kohm from nearly 5 V: after 7 s it stands at 2.5 V, a little over the threshold of 2.1 V; after 15 s at 1.1 V.
TEST(Harbour, StairLampWaitsBeforeItGoesOut) {
    const auto seen = lightInTime(load("stair-lamp"), 20, 0.7);
    EXPECT_GT(seen[5], kLit);
    EXPECT_GT(seen[60], kLit);
    EXPECT_LT(seen[150], kDark);
    EXPECT_LT(lightInTime(load("stair-lamp"), 1).back(), kDark) << "nobody has pressed";
}

/// Each base falls by what its capacitor had across it and rises again towards plus through its resistor (common practice). With
/// 22 uF and 22 kohm: 0.48 s ln(9.25 / 4.35) and, behind the LED, 0.48 s ln(7.7 / 4.35), so that a period is about 0.64 s.
TEST(Harbour, FlashingBeaconFlashes) {
    const Bench bench = load("flashing-beacon");
    EXPECT_TRUE(validate(bench).ok());
    const auto seen = lightInTime(bench, 10);
    int comings = 0;
    for (std::size_t i = 20; i + 1 < seen.size(); ++i) comings += seen[i] < 0.3 && seen[i + 1] >= 0.3 ? 1 : 0;
    EXPECT_GT(comings, 8.0 / 0.64 * 0.8);
    EXPECT_LT(comings, 8.0 / 0.64 * 1.2);
}

TEST(Harbour, BeaconLampLightsWhilePressed) {
    const Bench bench = load("beacon-lamp");
    EXPECT_LT(brightnessOf(bench, "D1"), kDark);
    EXPECT_GT(brightnessOf(bench, "D1", {"S1"}), kLit);
}

// Common practice: buttons in series give AND.
TEST(Harbour, LockGateNeedsBothKeepers) {
    const Bench bench = load("lock-gate");
    EXPECT_LT(brightnessOf(bench, "D1"), kDark);
    EXPECT_LT(brightnessOf(bench, "D1", {"S1"}), kDark);
    EXPECT_LT(brightnessOf(bench, "D1", {"S2"}), kDark);
    EXPECT_GT(brightnessOf(bench, "D1", {"S1", "S2"}), kLit);
}

// Common practice: buttons in parallel give OR.
TEST(Harbour, QuayBellLampAnswersEitherSide) {
    const Bench bench = load("quay-bell-lamp");
    EXPECT_LT(brightnessOf(bench, "D1"), kDark);
    EXPECT_GT(brightnessOf(bench, "D1", {"S1"}), kLit);
    EXPECT_GT(brightnessOf(bench, "D1", {"S2"}), kLit);
    EXPECT_GT(brightnessOf(bench, "D1", {"S1", "S2"}), kLit);
}

TEST(Harbour, FairwayDimmerBrightensAsItIsTurnedUp) {
    const Bench bench = load("fairway-dimmer");
    double last = -1;
    for (const double turn : {0.0, 0.25, 0.5, 0.75, 1.0}) {
        const double now = brightnessOf(edited(bench, setStateEdit(bench, "RV1", "turn", turn)), "D1");
        EXPECT_GT(now, last + 0.02) << "at a turn of " << turn;
        last = now;
    }
    EXPECT_GT(last, 0.6);
}

// Common practice: two changeover switches light a stair from both ends; either one changes the lamp.
TEST(Harbour, StairLampChangesWithEitherSwitch) {
    const Bench bench = load("two-way-stair-lamp");
    for (const double low : {0.0, 1.0}) {
        for (const double high : {0.0, 1.0}) {
            const Bench half = edited(bench, setStateEdit(bench, "S1", "position", low));
            const double brightness = brightnessOf(edited(half, setStateEdit(half, "S2", "position", high)), "D1");
            if (low != high) {
                EXPECT_GT(brightness, kLit) << low << high;
            } else {
                EXPECT_LT(brightness, kDark) << low << high;
            }
        }
    }
}

TEST(Harbour, ThreeBuoysHaveThreeBrightnesses) {
    const Bench bench = load("three-buoys");
    const double d1 = brightnessOf(bench, "D1"), d2 = brightnessOf(bench, "D2"), d3 = brightnessOf(bench, "D3");
    EXPECT_GT(d1, d2 + 0.15);
    EXPECT_GT(d2, d3 + 0.15);
    EXPECT_GT(d3, 0.1);
}

// Common practice: joined legs of a four-legged button are one net, so a jumper may leave from either of them.
TEST(Harbour, GangwayWorksFromBothJoinedLegs) {
    const Bench behind = load("gangway");
    const auto* jumper = behind.findJumper("W2");
    ASSERT_NE(jumper, nullptr);
    ASSERT_EQ(std::get<Hole>(jumper->ends[0]), *parseHole("A.h16"));
    Jumper moved = *jumper;
    moved.ends[0] = *parseHole("A.c16");
    const Bench before = edited(behind, Edit{"Move W2", {ReplaceJumper{moved}}});
    for (const Bench* bench : {&behind, &before}) {
        EXPECT_LT(brightnessOf(*bench, "D1"), kDark);
        EXPECT_GT(brightnessOf(*bench, "D1", {"S1"}), kLit);
    }
    EXPECT_DOUBLE_EQ(brightnessOf(behind, "D1", {"S1"}), brightnessOf(before, "D1", {"S1"}));
}

TEST(Harbour, DarkBeaconIsOneHoleFromLight) {
    const Bench dark = load("dark-beacon");
    EXPECT_LT(brightnessOf(dark, "D1", {"S1"}), kDark);
    Part led = *dark.findPart("D1");
    Hole& anode = *led.leads[led.kind->leadIndex("anode")];
    anode.number -= 1;
    EXPECT_GT(brightnessOf(edited(dark, Edit{"Move D1", {ReplacePart{led}}}), "D1", {"S1"}), kLit);
}

}  // namespace
}  // namespace tiepoint::test
