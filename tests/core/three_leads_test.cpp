// A part kind with three leads and a transistor inside, in a catalogue of the test's own: from its file to what a bench shows.

#include "core/base/constants.h"
#include "core/parts/kind_file.h"
#include "core/snapshot/readings.h"
#include "support/build_bench.h"

#include <gtest/gtest.h>

#include <cmath>

namespace tiepoint {
namespace {

/// The three legs stand in a row, as those of a slide switch do.
std::string transistorFile(const std::string& nodes = R"("between": ["collector", "base", "emitter"])") {
    return R"({"kind": "test-transistor", "family": "Chip", "order": 1, "label": "transistor", "prefix": "Q",
      "package": "slide-switch",
      "leads": [{"name": "collector", "description": "left"}, {"name": "base", "description": "middle"},
                {"name": "emitter", "description": "right"}],
      "values": [{"name": "gain", "label": "Gain", "type": "number", "unit": "", "minimum": 10, "maximum": 1000, "default": 100}],
      "model": [{"element": "transistor", )" +
           nodes + R"(, "gain": "gain", "saturationCurrent": 1e-14}],
      "ratings": [], "search": [], "sources": [],
      "help": {"what": "w", "leads": "l", "ratings": "r", "caution": "c"}})";
}

const PartKind& transistorKind() {
    static const PartKind kind = readPartKind("test", transistorFile()).value();
    return kind;
}

Part transistorAt(std::string id, const char* collector, const char* base, const char* emitter) {
    Part part = makePart(transistorKind(), std::move(id));
    part.leads = {test::holeAt(collector), test::holeAt(base), test::holeAt(emitter)};
    return part;
}

TEST(ThreeLeads, AreReadByNameOrInARow) {
    const auto kind = readPartKind("test", transistorFile());
    ASSERT_TRUE(kind.ok()) << kind.error().oneLine();
    const ElementSpec& spec = kind->model[0];
    EXPECT_EQ(spec.between, (std::vector<std::string>{"collector", "base", "emitter"}));
    EXPECT_EQ(spec.from(), "collector");
    EXPECT_EQ(spec.to(), "emitter");
    const auto switched = findKind("slide-switch");
    EXPECT_EQ(switched->model[0].between, (std::vector<std::string>{"common", "a"})) << "as before: from and to";
    const std::pair<const char*, const char*> slips[] = {
        {R"("between": ["collector"])", "/model/0/between"},
        {R"("between": ["collector", 2, "emitter"])", "/model/0/between"},
        {R"("between": ["collector", "bass", "emitter"])", "/model"},
        {R"("from": "collector")", "/model/0/to"},
        {R"("between": ["collector", "base", "emitter"], "from": "base")", "/model/0/from"},
    };
    for (const auto& [nodes, pointer] : slips) {
        const auto slip = readPartKind("slip", transistorFile(nodes));
        ASSERT_FALSE(slip.ok()) << nodes;
        EXPECT_EQ(slip.error().place.pointer, pointer) << nodes;
    }
}

TEST(ThreeLeads, ACurrentDividesAmongThem) {
    Bench bench = test::BenchBuilder()
                      .board("A", "half")
                      .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.top-3"}}, {{"voltage", 5}})
                      .part("R1", "resistor", {{"1", "A.top+8"}, {"2", "A.a11"}}, {{"resistance", 430e3}})
                      .part("R2", "resistor", {{"1", "A.b12"}, {"2", "A.top-12"}}, {{"resistance", 470}})
                      .jumper("A.top+10", "A.a10")
                      .build();
    bench.parts.push_back(transistorAt("Q1", "A.c10", "A.c11", "A.c12"));
    const auto s = evaluate(std::make_shared<const Bench>(bench));
    ASSERT_EQ(s->status(), Status::Solved) << s->solution.reason;
    const int first = s->layout->leadIndex(bench.partIndex("Q1"), 0);
    const double collector = s->leadCurrent[first], base = s->leadCurrent[first + 1],
                 emitter = s->leadCurrent[first + 2];
    EXPECT_NEAR(collector, 100 * base, 101 * 5e-12);  // the leak of the collector's junction, amplified
    EXPECT_NEAR(collector + base + emitter, 0, 1e-15);
    // By hand: 5 V over the base resistor, the junction and the emitter resistor times 101.
    const double junction = kThermalVoltage * std::log(collector / 1e-14);
    EXPECT_NEAR(base, (5 - junction) / (430e3 + 101 * 470), 1e-4 * base);
    EXPECT_NEAR(
        s->partPower[bench.partIndex("Q1")],
        collector * s->leadVoltage(first) + base * s->leadVoltage(first + 1) + emitter * s->leadVoltage(first + 2),
        1e-12);
    EXPECT_LT(std::abs(s->solution.powerBalance), 1e-11);
    EXPECT_NEAR(currentThrough(*s, bench.partIndex("Q1")).outAmpere, -emitter, 1e-12);
}

TEST(ThreeLeads, ABistablePairIsRefusedInPlainWords) {
    Bench bench = test::BenchBuilder()
                      .board("A", "half")
                      .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.top-3"}}, {{"voltage", 5}})
                      .part("R1", "resistor", {{"1", "A.top+8"}, {"2", "A.a10"}}, {{"resistance", 1000}})
                      .part("R2", "resistor", {{"1", "A.top+12"}, {"2", "A.a16"}}, {{"resistance", 1000}})
                      .part("R3", "resistor", {{"1", "A.b10"}, {"2", "A.b17"}}, {{"resistance", 10e3}})
                      .part("R4", "resistor", {{"1", "A.d16"}, {"2", "A.d11"}}, {{"resistance", 10e3}})
                      .jumper("A.a12", "A.top-10")
                      .jumper("A.a18", "A.top-15")
                      .build();
    bench.parts.push_back(transistorAt("Q1", "A.c10", "A.c11", "A.c12"));
    bench.parts.push_back(transistorAt("Q2", "A.c16", "A.c17", "A.c18"));
    const auto s = evaluate(std::make_shared<const Bench>(bench));
    EXPECT_EQ(s->status(), Status::None);
    EXPECT_EQ(
        s->solution.reason,
        "The circuit around Q1, Q2 has more than one state of rest: which of them it takes is decided by how it is "
        "switched on.");
    EXPECT_EQ(s->solution.troubleParts, (std::vector<int>{bench.partIndex("Q1"), bench.partIndex("Q2")}));
}

}  // namespace
}  // namespace tiepoint
