// The drawer, and the resistor that an LED needs. Letter code and preferred numbers: IEC 60062, IEC 60063. The current with the chosen
// resistor is held against the whole chain from holes to solution; a worked example against T. R. Kuphaldt's rule
// (Lessons in Electric Circuits, Vol. III, ch. 3): resistance is what the LED leaves of the supply's voltage, divided by the current.

#include "core/base/quantity.h"
#include "core/sizing/series_resistor.h"
#include "core/snapshot/snapshot.h"
#include "support/build_bench.h"
#include "support/inspect_bench.h"

#include <gtest/gtest.h>

namespace tiepoint {
namespace {

Part led(int colour = 0) {
    Part part = makePart(*findKind("led"), "D1");
    part.values[static_cast<std::size_t>(part.kind->valueIndex("colour"))] = colour;
    return part;
}

TEST(Drawer, ReadsListsAsPeopleWriteThem) {
    const auto drawer = readDrawer(" 1k, 220;330 4k7\n2R2 330R");
    ASSERT_TRUE(drawer.ok());
    EXPECT_EQ(drawer->ohms(), (std::vector<double>{2.2, 220, 330, 1000, 4700}));
    EXPECT_EQ(writeDrawer(*drawer), "2R2 220R 330R 1k 4k7");
    EXPECT_EQ(*readDrawer(writeDrawer(*drawer)), *drawer);
    EXPECT_TRUE(readDrawer("")->isEverything());
    EXPECT_TRUE(readDrawer("all")->isEverything());
    EXPECT_EQ(writeDrawer(ResistorDrawer()), "all");
    for (const char* wrong : {"220 abc", "-5", "0", "2G"}) EXPECT_FALSE(readDrawer(wrong).ok()) << wrong;
    EXPECT_NE(readDrawer("220 abc").error().message.find("\"abc\""), std::string::npos);
}

TEST(Drawer, GivesWhatItHoldsFromAValueOn) {
    const ResistorDrawer kit({220, 330, 1000});
    EXPECT_EQ(kit.from(220, 5), (std::vector<double>{220, 330, 1000}));
    EXPECT_EQ(kit.from(221, 1), (std::vector<double>{330}));
    EXPECT_TRUE(kit.from(1001, 3).empty());
    EXPECT_EQ(ResistorDrawer().from(300, 3), (std::vector<double>{330, 390, 470})) << "E12";
    EXPECT_TRUE(kit.holds(330));
    EXPECT_FALSE(kit.holds(270));
    EXPECT_TRUE(ResistorDrawer().holds(270));
    EXPECT_FALSE(ResistorDrawer().holds(300)) << "of E24 only";
}

TEST(SeriesResistor, IsWhatTheLedLeavesDividedByTheCurrent) {
    // A red LED takes 2.0 V at 20 mA: (5 V - 2.0 V) / 20 mA = 150 ohm, which is a preferred number.
    ResistorQuestion question{5, led(), 1, 0.020, {}};
    const auto choice = chooseResistor(question);
    ASSERT_TRUE(choice.ok()) << choice.error().message;
    EXPECT_NEAR(choice->lightVolt, 2.0, 1e-9);
    EXPECT_NEAR(choice->exactOhm, 150, 1e-6);
    EXPECT_EQ(choice->ohm, 150);
    EXPECT_NEAR(choice->watt, 0.060, 1e-6);
    EXPECT_EQ(choice->ratingWatt, 0.125);
    EXPECT_EQ(*choice->bands,
              (std::vector<BandColour>{BandColour::Brown, BandColour::Green, BandColour::Brown, BandColour::Gold}));
    // (9 V - 2 * 2.0 V) / 20 mA = 250 ohm; 270 is the next of E12.
    question.supplyVolt = 9;
    question.lights = 2;
    EXPECT_NEAR(chooseResistor(question)->exactOhm, 250, 1e-6);
    EXPECT_EQ(chooseResistor(question)->ohm, 270);
}

TEST(SeriesResistor, TheSolvedBenchAgrees) {
    for (const double volt : {4.5, 5.0, 9.0, 12.0, 24.0}) {
        for (int colour = 0; colour < 8; ++colour) {
            for (const double wanted : {0.5e-3, 5e-3, 0.015}) {
                const auto choice = chooseResistor({volt, led(colour), 1, wanted, {}});
                ASSERT_TRUE(choice.ok()) << choice.error().message;
                EXPECT_GE(choice->ohm, choice->exactOhm * (1 - 1e-9)) << "the safe side";
                EXPECT_LE(choice->ampere, wanted * (1 + 1e-9));
                test::BenchBuilder builder;
                builder.board("A", "half")
                    .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}},
                          {{"voltage", volt}, {"seriesResistance", 0}})
                    .part("R1", "resistor", {{"1", "A.top+5"}, {"2", "A.c7"}}, {{"resistance", choice->ohm}})
                    .part("D1", "led", {{"anode", "A.d7"}, {"cathode", "A.d8"}},
                          {{"colour",
                            led(colour).kind->values[0].choices[static_cast<std::size_t>(colour)].name.c_str()}})
                    .jumper("A.a8", "A.bottom-9");
                const auto snapshot = evaluate(builder.share());
                ASSERT_EQ(snapshot->status(), Status::Solved);
                const double ampere =
                    snapshot->leadCurrent[static_cast<std::size_t>(snapshot->layout->leadIndex(2, 0))];
                EXPECT_NEAR(choice->ampere, ampere, 1e-9 * ampere + 1e-11) << volt << " V, colour " << colour;
            }
        }
    }
}

TEST(SeriesResistor, SaysWhyThereIsNone) {
    const auto why = [](const ResistorQuestion& question) {
        const auto choice = chooseResistor(question);
        return choice.ok() ? std::string() : choice.error().message;
    };
    EXPECT_EQ(why({1.5, led(), 1, 0.010, {}}), "the LED takes 1.91 V at 10.0 mA, and the supply gives 1.50 V");
    EXPECT_NE(why({5, led(), 3, 0.010, {}}).find("3 LEDs in series take"), std::string::npos);
    EXPECT_NE(why({5, led(), 1, 0.050, {}}).find("maximum of this LED"), std::string::npos);
    EXPECT_NE(why({5, led(), 1, 0, {}}), "");
    EXPECT_NE(why({5, led(), 1, 0.001, ResistorDrawer({220})}).find("drawer"), std::string::npos);
    EXPECT_NE(why({5, makePart(*findKind("resistor"), "R1"), 1, 0.01, {}}), "");
}

TEST(Drawer, MendsTakeOnlyWhatItHolds) {
    test::BenchBuilder builder;
    builder.board("A", "half")
        .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}}, {{"voltage", 5}})
        .part("R1", "resistor", {{"1", "A.top+5"}, {"2", "A.c7"}}, {{"resistance", 10}})
        .part("D1", "led", {{"anode", "A.d7"}, {"cathode", "A.d8"}})
        .jumper("A.a8", "A.bottom-9");
    const auto snapshot = evaluate(builder.share());
    const auto mendWith = [&](const ResistorDrawer& drawer) {
        const Report report = inspect(*snapshot, drawer);
        return report.findings.empty() || !report.findings.front().mend ? std::string()
                                                                        : report.findings.front().mend->text;
    };
    EXPECT_EQ(mendWith({}), "Take 220 Ω for R1");
    EXPECT_EQ(mendWith(ResistorDrawer({22, 470, 10e3})), "Take 470 Ω for R1");
    EXPECT_EQ(mendWith(ResistorDrawer({22, 33})), "") << "nothing in this drawer helps";
}

}  // namespace
}  // namespace tiepoint
