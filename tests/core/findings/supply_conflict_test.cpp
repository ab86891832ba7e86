// supply-conflict: supplies that push current through each other.

#include "support/inspect_bench.h"

namespace tiepoint::test {
namespace {

TEST(SupplyConflict, ByTheirVoltages) {
    struct Case {
        double second;
        std::size_t count;
    };
    for (const Case& each : {Case{5, 0}, Case{9, 1}, Case{3, 1}}) {
        auto builder = beacon();
        builder.part("PS2", "bench-supply", {{"+", "A.top+20"}, {"-", "A.bottom-20"}}, {{"voltage", each.second}});
        const auto findings = found("supply-conflict", builder.share());
        ASSERT_EQ(findings.size(), each.count) << each.second;
        if (each.count == 0) continue;
        EXPECT_EQ(findings[0].severity, Severity::Fault);
        EXPECT_EQ(findings[0].parts.front(), each.second > 5 ? "PS1" : "PS2");
        EXPECT_GT(findings[0].figures[0].second, 0.1);
    }
}

/// A limit that keeps the current small makes no peace of it: they hold different voltages between the same two pieces of metal.
TEST(SupplyConflict, FoundUnderATinyLimit) {
    for (const double limit : {0.001, 0.02}) {
        BenchBuilder builder;
        builder.board("A", "half")
            .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}},
                  {{"voltage", 5}, {"currentLimit", limit}})
            .part("PS2", "bench-supply", {{"+", "A.top+20"}, {"-", "A.bottom-20"}},
                  {{"voltage", 9}, {"currentLimit", limit}})
            .part("R1", "resistor", {{"1", "A.c8"}, {"2", "A.c14"}}, {{"resistance", 10e3}})
            .jumper("A.top+8", "A.a8")
            .jumper("A.a14", "A.bottom-12");
        const auto findings = found("supply-conflict", builder.share());
        ASSERT_EQ(findings.size(), 1u) << limit;
        EXPECT_EQ(findings[0].severity, Severity::Fault);
        for (const char* supply : {"PS1", "PS2"})
            EXPECT_NE(std::ranges::find(findings[0].parts, supply), findings[0].parts.end()) << supply;
    }
}

TEST(SupplyConflict, SilentOnCellsInARow) {
    BenchBuilder builder;
    builder.board("A", "half")
        .part("PS1", "cells", {{"+", "A.a5"}, {"-", "A.a9"}}, {{"count", 2}})
        .part("PS2", "cells", {{"+", "A.b9"}, {"-", "A.a14"}}, {{"count", 2}})
        .part("R1", "resistor", {{"1", "A.c5"}, {"2", "A.c14"}});
    EXPECT_TRUE(inspected(builder.share()).empty()) << told(inspected(builder.share()));
}

}  // namespace
}  // namespace tiepoint::test
