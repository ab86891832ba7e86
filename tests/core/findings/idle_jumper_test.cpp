// idle-jumper: jumpers that join what is joined already.

#include "support/inspect_bench.h"

namespace tiepoint::test {
namespace {

TEST(IdleJumper, WithinOneStripAndBesideAnother) {
    struct Case {
        const char* from;
        const char* to;
        std::size_t count;
    };
    for (const Case& each : {Case{"A.a14", "A.b14", 1}, Case{"A.top+9", "A.top+12", 1}, Case{"A.top+9", "A.b8", 1},
                             Case{"A.a14", "A.b8", 0}}) {
        auto builder = beacon();
        builder.jumper("W3", each.from, each.to, "green");
        const auto findings = found("idle-jumper", builder.share());
        ASSERT_EQ(findings.size(), each.count) << each.from << each.to;
        if (each.count == 0) continue;
        EXPECT_EQ(findings[0].severity, Severity::Remark);
        EXPECT_EQ(findings[0].parts, Ids{"W3"});
        EXPECT_TRUE(afterMend(builder.build(), findings[0]).empty());
    }
}

TEST(IdleJumper, BesideTheJoinedLegsOfAButton) {
    auto builder = beacon();
    builder.part("S1", "push-button", {{"1a", "A.e20"}, {"1b", "A.f20"}, {"2a", "A.e22"}, {"2b", "A.f22"}})
        .jumper("W3", "A.d20", "A.g20", "green");
    EXPECT_EQ(found("idle-jumper", builder.share()).size(), 1u);
}

}  // namespace
}  // namespace tiepoint::test
