// Light and warmth around the table: kept in the file, judged by their ranges, changed by an edit.

#include "core/bench/bench_file.h"
#include "core/bench/validate.h"
#include "core/edit/edit.h"
#include "core/edit/step_words.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace tiepoint {
namespace {

std::string benchSaying(const std::string& member) {
    return R"({"format":"tiepoint-bench","version":1,"title":"Lock gate",)" + member + R"("boards":[]})";
}

TEST(Surroundings, AreKeptAsTheyAreSaid) {
    const struct {
        const char* member;
        std::optional<SaidSurroundings> said;
    } table[] = {
        {"", {}},
        {R"("surroundings":{},)", SaidSurroundings{{300, 25}, {}}},
        {R"("surroundings":{"light":0},)", SaidSurroundings{{0, 25}, {}}},
        {R"("surroundings":{"temperature":-40,"light":200000},)", SaidSurroundings{{200e3, -40}, {}}},
        {R"("surroundings":{"torch":{"light":800,"at":[3.5,-2]}},)",
         SaidSurroundings{{300, 25, HeldOver{{3.5, -2}, 800}, {}}, {}}},
        {R"("surroundings":{"light":8,"hand":{"at":[1,2],"temperature":34}},)",
         SaidSurroundings{{8, 25, {}, HeldOver{{1, 2}, 34}}, {}}},
        {R"("surroundings":{"temperature":85,"wind":[3]},)", SaidSurroundings{{300, 85}, {{"wind", "[3]"}}}},
    };
    for (const auto& [member, said] : table) {
        const auto read = readBench(benchSaying(member));
        ASSERT_TRUE(read.ok()) << member << read.error().oneLine();
        EXPECT_EQ(read->bench.surroundings, said);
        const std::string written = writeBench(read->bench);
        EXPECT_EQ(written.find("surroundings") != std::string::npos, said.has_value());
        const auto again = readBench(written);
        ASSERT_TRUE(again.ok());
        EXPECT_EQ(again->bench, read->bench);
    }
}

TEST(Surroundings, OutOfRangeAreRefusedWithTheirPlace) {
    const struct {
        const char* member;
        const char* error;
    } table[] = {
        {R"("surroundings":3,)", "1:75: /surroundings: a number stands where an object belongs"},
        {R"("surroundings":{"light":"dark"},)", "1:84: /surroundings/light: text stands where a number belongs"},
        {R"("surroundings":{"light":-1},)", "1:84: /surroundings/light: light is -1; it may be 0 to 200000 lux"},
        {R"("surroundings":{"light":200001},)",
         "1:84: /surroundings/light: light is 200001; it may be 0 to 200000 lux"},
        {R"("surroundings":{"temperature":-40.5},)",
         "1:90: /surroundings/temperature: temperature is -40.5; it may be -40 to 85 degrees Celsius"},
        {R"("surroundings":{"light":5,"temperature":86},)",
         "1:100: /surroundings/temperature: temperature is 86; it may be -40 to 85 degrees Celsius"},
        {R"("surroundings":{"torch":{"at":[1,2],"light":-5}},)",
         "1:104: /surroundings/torch/light: light is -5; it may be 0 to 200000"},
        {R"("surroundings":{"hand":{"at":[1,2],"temperature":90}},)",
         "1:109: /surroundings/hand/temperature: temperature is 90; it may be -40 to 85"},
        {R"("surroundings":{"torch":{"at":[1],"light":5}},)",
         "1:90: /surroundings/torch/at: at has 1 numbers; it takes two, x and y"},
    };
    for (const auto& [member, error] : table) {
        const auto read = readBench(benchSaying(member));
        ASSERT_FALSE(read.ok()) << member;
        EXPECT_EQ(read.error().oneLine(), error);
    }
    Bench bench = makeNewBench();
    bench.surroundings = SaidSurroundings{{std::numeric_limits<double>::quiet_NaN(), 25}, {}};
    EXPECT_FALSE(validate(bench).ok());
}

TEST(Surroundings, ATorchAndAHandCountWhereTheyAre) {
    Surroundings all{8, 20, HeldOver{{10, 5}, 1000}, HeldOver{{40, 5}, 35}};
    const Point below{10 * kPitchMm, 5 * kPitchMm}, held{40 * kPitchMm, 5 * kPitchMm};
    EXPECT_NEAR(surroundingsAt(all, below).lightLux, 1008, 1e-9);
    EXPECT_NEAR(surroundingsAt(all, held).temperatureCelsius, 35, 1e-9);
    // As far to the side as it is high: the ray is the square root of two longer and meets the board at 45 degrees.
    const Surroundings aside = surroundingsAt(all, below + Point{0, kTorchHeightMm});
    EXPECT_NEAR(aside.lightLux, 8 + 1000 * 0.5 * std::sqrt(0.5), 1e-6);
    EXPECT_NEAR(surroundingsAt(all, below + Point{0, 4000}).lightLux, 8, 0.01);
    EXPECT_NEAR(surroundingsAt(all, held + Point{0, 4000}).temperatureCelsius, 20, 1e-3);
    EXPECT_FALSE(surroundingsAt(all, held).torch || surroundingsAt(all, held).hand);
    EXPECT_EQ(surroundingsAside(all), (Surroundings{8, 20}));
}

TEST(Surroundings, AreSetByAnEditAndSetBack) {
    const Bench bench = makeNewBench();
    const Edit edit{"Draw the curtains", {SetSurroundings{SaidSurroundings{{2, 18}, {}}}}};
    const auto dim = apply(bench, edit);
    ASSERT_TRUE(dim.ok());
    EXPECT_EQ(dim->bench.surroundings, (SaidSurroundings{{2, 18}, {}}));
    EXPECT_EQ(stepNote(bench, edit, dim->bench).words, "light and warmth");
    const auto back = apply(dim->bench, dim->inverse);
    ASSERT_TRUE(back.ok());
    EXPECT_EQ(back->bench, bench);
    EXPECT_FALSE(apply(bench, {"Too hot", {SetSurroundings{SaidSurroundings{{300, 500}, {}}}}}).ok());
}

}  // namespace
}  // namespace tiepoint
