// bare-leads: legs that cross.

#include "support/inspect_bench.h"

namespace tiepoint::test {
namespace {

TEST(BareLeads, LegsThatCross) {
    for (const bool crossed : {true, false}) {
        auto builder = beacon();
        builder.part("R2", "resistor", {{"1", "A.a18"}, {"2", crossed ? "A.d30" : "A.a30"}})
            .part("R3", "resistor", {{"1", "A.d19"}, {"2", crossed ? "A.a21" : "A.d25"}});
        EXPECT_EQ(found("bare-leads", builder.share()).size(), crossed ? 1u : 0u) << told(inspected(builder.share()));
    }
}

}  // namespace
}  // namespace tiepoint::test
