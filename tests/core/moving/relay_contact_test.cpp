// A relay's contact as whoever reads a solved bench meets it: what it joins at present, what it parts, a short circuit through it.

#include "core/meter/drivers.h"
#include "core/why/current_path.h"
#include "support/inspect_bench.h"
#include "support/wired_bench.h"

#include <gtest/gtest.h>

namespace tiepoint::test {
namespace {

/// S1 switches the coil; D1 behind R1 hangs on one of the contacts, the blade on plus.
WiredBench switchedLight(const char* contact) {
    WiredBench bench;
    bench.part("PS1", "bench-supply", {{"+", "plus"}, {"-", "minus"}}, {{"voltage", 5}})
        .part("S1", "push-button", {{"1a", "plus"}, {"2a", "coil"}})
        .part("K1", "relay", {{"coil1", "coil"}, {"coil2", "minus"}, {"common", "plus"}, {contact, "out"}})
        .part("D9", "diode", {{"anode", "minus"}, {"cathode", "coil"}})
        .part("R1", "resistor", {{"1", "out"}, {"2", "top"}}, {{"resistance", 330}})
        .part("D1", "led", {{"anode", "top"}, {"cathode", "minus"}});
    return bench;
}

std::shared_ptr<const Snapshot> settledWith(std::shared_ptr<const Bench> bench, bool held) {
    Inputs inputs;
    if (held) inputs.held = {"S1"};
    return evaluate(std::move(bench), inputs);
}

/// Whether D1's anode has a way to plus, D1 left out.
bool reachesPlus(const Snapshot& snapshot) {
    const int part = snapshot.layout->bench->partIndex("D1");
    const int net = snapshot.layout->netOfLead[snapshot.layout->leadIndex(part, 0)];
    return reachWithout(snapshot, part)[static_cast<std::size_t>(net)].plus;
}

TEST(RelayContact, JoinsWhatItStandsAtAndNothingElse) {
    for (const auto& [contact, lit] : {std::pair("open", true), std::pair("closed", false)}) {
        const auto bench = switchedLight(contact).share();
        for (const bool held : {false, true}) {
            const auto snapshot = settledWith(bench, held);
            ASSERT_EQ(snapshot->status(), Status::Solved);
            EXPECT_EQ(snapshot->brightness(bench->partIndex("D1")) > 0.1, held == lit) << contact << held;
            EXPECT_EQ(reachesPlus(*snapshot), held == lit) << contact << held;
        }
    }
}

/// A multimeter set to ohms beside the contact's far side: another source is there only while the contact joins it.
TEST(RelayContact, TellsAMeterWhatHangsTogether) {
    WiredBench wired = switchedLight("open");
    wired.part("MM1", "multimeter", {{"+", "out"}, {"com", "minus"}}, {}, {{"dial", "ohms"}});
    const auto bench = wired.share();
    const int meter = bench->partIndex("MM1");
    EXPECT_EQ(otherSourceAt(*settledWith(bench, true), meter), bench->partIndex("PS1"));
}

TEST(RelayContact, AShortThroughItIsFound) {
    WiredBench wired;
    wired.part("PS1", "bench-supply", {{"+", "plus"}, {"-", "minus"}}, {{"voltage", 5}, {"currentLimit", 0.5}})
        .part("K1", "relay", {{"common", "plus"}, {"closed", "minus"}});
    const auto shorts = found("short-circuit", wired.share());
    ASSERT_EQ(shorts.size(), 1U) << told(inspected(wired.share()));
    EXPECT_NE(std::ranges::find(shorts[0].parts, "K1"), shorts[0].parts.end());
    WiredBench open;
    open.part("PS1", "bench-supply", {{"+", "plus"}, {"-", "minus"}}, {{"voltage", 5}, {"currentLimit", 0.5}})
        .part("K1", "relay", {{"common", "plus"}, {"open", "minus"}});
    EXPECT_TRUE(found("short-circuit", open.share()).empty()) << told(inspected(open.share()));
}

}  // namespace
}  // namespace tiepoint::test
