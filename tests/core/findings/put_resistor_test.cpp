// Where the resistor that was chosen for a light goes, and what it does there, by the solve.

#include "core/findings/put_resistor.h"

#include "core/snapshot/readings.h"
#include "support/compact_bench.h"
#include "support/inspect_bench.h"

namespace tiepoint::test {
namespace {

std::shared_ptr<const Snapshot> solved(std::string_view text) {
    return evaluate(std::make_shared<const Bench>(compactBench(text)));
}

int indexOf(const Snapshot& snapshot, std::string_view id) { return snapshot.layout->bench->partIndex(id); }

std::string inSeries(std::string_view text, std::string_view light) {
    const auto snapshot = solved(text);
    const int found = resistorInSeries(*snapshot->layout, indexOf(*snapshot, light));
    return found < 0 ? "" : snapshot->layout->bench->parts[static_cast<std::size_t>(found)].id;
}

const std::string kBeacon =
    "half; PS1 top+3 bottom-3 5; R1 c8 c14 330; D1 e14 f14 red; W1 top+7 a8 red; W2 j14 bottom-13 black";
const std::string kBehindButton =
    "half; PS1 top+3 bottom-3 5; R1 c8 c14 330; S1 e14; D1 h16 h19 red; W1 top+7 a8 red; W2 j19 bottom-18 black";
const std::string kBare = "half; PS1 top+3 bottom-3 5 0.02; D1 e14 f14 red; W1 top+13 a14 red; W2 j14 bottom-13 black";

TEST(ResistorInSeries, IsTheNeighbourOrBehindASwitch) {
    EXPECT_EQ(inSeries(kBeacon, "D1"), "R1");
    EXPECT_EQ(inSeries(kBehindButton, "D1"), "R1");
    EXPECT_EQ(inSeries(kBare, "D1"), "");
    EXPECT_EQ(inSeries(kBeacon + "; R2 b14 b20 100", "D1"), "") << "where three meet the current divides";
}

TEST(ResistorInSeries, AnInstrumentThatLooksOnJoinsNothing) {
    EXPECT_EQ(inSeries(kBeacon + "; M1 d14 g14 volts", "D1"), "R1");
    EXPECT_EQ(inSeries(kBeacon + "; M1 d14 g14 amperes", "D1"), "") << "set to amperes it carries current";
}

TEST(PutResistor, TakesTheValueForTheOneThatIsThere) {
    const auto snapshot = solved(kBeacon);
    const auto mend = putResistor(*snapshot, indexOf(*snapshot, "D1"), 680);
    ASSERT_TRUE(mend);
    EXPECT_EQ(mend->text, "Take 680 Ω for R1");
    const auto after = apply(*snapshot->layout->bench, mend->edit);
    ASSERT_TRUE(after.ok());
    const Part& resistor = *after->bench.findPart("R1");
    EXPECT_EQ(resistor.value(resistor.kind->valueIndex("resistance")), 680);
    EXPECT_FALSE(putResistor(*snapshot, indexOf(*snapshot, "D1"), 330)) << "it has that value";
    EXPECT_FALSE(putResistor(*snapshot, indexOf(*snapshot, "R1"), 330));
}

TEST(PutResistor, TakesTheCurrentDownInPlaceOfAJumper) {
    const auto snapshot = solved(kBare);
    const int light = indexOf(*snapshot, "D1");
    const auto mend = putResistor(*snapshot, light, 330);
    ASSERT_TRUE(mend);
    const auto after = apply(*snapshot->layout->bench, mend->edit);
    ASSERT_TRUE(after.ok());
    EXPECT_EQ(after->bench.jumpers.size(), 1u);
    const auto mended = evaluate(std::make_shared<const Bench>(after->bench));
    // What a red LED leaves of 5 V over 330 ohm: 9 to 10 mA.
    EXPECT_NEAR(currentThrough(*mended, indexOf(*mended, "D1")).inAmpere, 0.0094, 0.0005);
}

}  // namespace
}  // namespace tiepoint::test
