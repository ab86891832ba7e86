// The timer 555 through time, against data sheets and closed forms. Sources stand at each test.

#include "support/running_bench.h"

#include <gtest/gtest.h>

#include <cmath>

namespace tiepoint {
namespace {

using test::Running;
using test::WiredBench;
using test::wiredSupply;

WiredBench astable(double volt, double ohmA, double ohmB, double farad) {
    WiredBench wired = wiredSupply(volt);
    wired
        .part("U1", "timer-555",
              {{"GND", "minus"},
               {"TRIG", "cap"},
               {"OUT", "out"},
               {"RESET", "plus"},
               {"THRES", "cap"},
               {"DISCH", "discharge"},
               {"VCC", "plus"}})
        .part("RA", "resistor", {{"1", "plus"}, {"2", "discharge"}}, {{"resistance", ohmA}})
        .part("RB", "resistor", {{"1", "discharge"}, {"2", "cap"}}, {{"resistance", ohmB}})
        .part("C1", "ceramic-capacitor", {{"1", "cap"}, {"2", "minus"}}, {{"capacitance", farad}})
        .part("RL", "resistor", {{"1", "out"}, {"2", "minus"}}, {{"resistance", 10e3}});
    return wired;
}

// Formulae and cases: ST NE555/SA555/SE555 data sheet, Doc ID 2182 Rev 6, p. 10 (t_high = 0.693 (RA + RB) C, t_low = 0.693 RB C); cases
// from a textbook page and a calculator page. Initial error of the timing: 2.25 % typical in the astable circuit (the data sheets' table,
// from memory).
TEST(Timer555, BeatsAsTheDataSheetSays) {
    const struct {
        double volt, ohmA, ohmB, farad;
    } cases[] = {{5, 10e3, 100e3, 0.1e-6},
                 {5, 10e3, 10e3, 0.1e-6},
                 {9, 1e3, 10e3, 10e-6},
                 {12, 1e6, 100e3, 0.1e-6},
                 {12, 5e3, 3e3, 0.15e-6}};
    for (const auto& c : cases) {
        const WiredBench wired = astable(c.volt, c.ohmA, c.ohmB, c.farad);
        Running run(wired);
        const double high = 0.693 * (c.ohmA + c.ohmB) * c.farad, low = 0.693 * c.ohmB * c.farad, period = high + low;
        const double step = period / 500, begun = 3 * period;
        const auto isHigh = [&] { return run.volt("out") > c.volt / 2; };
        const auto up = run.rises(begun, begun + 3.5 * period, step, isHigh);
        ASSERT_GE(up.size(), 3u) << c.ohmA;
        EXPECT_NEAR((up[2] - up[0]) / 2, period, 0.0225 * period) << c.ohmA;
        const auto down = run.rises(up[2] + 2 * period, up[2] + 4 * period, step, [&] { return !isHigh(); });
        ASSERT_GE(down.size(), 1u);
        const auto next = run.rises(down[0] + 2 * period, down[0] + 4.2 * period, step, isHigh);
        ASSERT_GE(next.size(), 1u);
        const double lasted = std::fmod(next[0] - down[0], (up[2] - up[0]) / 2);
        EXPECT_NEAR(lasted, low, 0.0225 * period + 2 * step) << c.ohmA;
    }
}

// t = 1.1 RA C: TI LM555, SNAS548B, p. 7, with the waveform figure's 9.1 kilohm and 0.01 uF; 2 kilohm and 1 uF from textbook slides.
// Initial error 1 % typical in the monostable circuit (the same table, from memory).
TEST(Timer555, GivesOnePulseOfTheLengthOnTheDataSheet) {
    const struct { double ohm, farad; } cases[] = {{9.1e3, 0.01e-6}, {2e3, 1e-6}};
    for (const auto& c : cases) {
        WiredBench wired = wiredSupply(5);
        wired
            .part("U1", "timer-555",
                  {{"GND", "minus"},
                   {"TRIG", "trigger"},
                   {"OUT", "out"},
                   {"RESET", "plus"},
                   {"THRES", "cap"},
                   {"DISCH", "cap"},
                   {"VCC", "plus"}})
            .part("RA", "resistor", {{"1", "plus"}, {"2", "cap"}}, {{"resistance", c.ohm}})
            .part("C1", "ceramic-capacitor", {{"1", "cap"}, {"2", "minus"}}, {{"capacitance", c.farad}})
            .part("R1", "resistor", {{"1", "plus"}, {"2", "trigger"}}, {{"resistance", 10e3}})
            .part("S1", "push-button", {{"1a", "trigger"}, {"2a", "minus"}})
            .part("RL", "resistor", {{"1", "out"}, {"2", "minus"}}, {{"resistance", 10e3}});
        Inputs inputs;
        const double length = 1.1 * c.ohm * c.farad, pressed = 0.02;
        inputs.presses = {{"S1", pressed, pressed + length / 4}};
        Running run(wired, inputs);
        run.to(pressed - 1e-3);
        EXPECT_LT(run.volt("out"), 0.2);
        double ended = 0;
        const double step = length / 400;
        for (double second = pressed + step; ended == 0 && second < pressed + 2 * length; second += step) {
            run.to(second);
            if (run.volt("out") < 2) ended = second;
        }
        EXPECT_NEAR(ended - pressed, length, 0.01 * length + step);
    }
}

TEST(Timer555, ResetComesFirst) {
    WiredBench wired = astable(5, 10e3, 10e3, 0.1e-6);
    wired.part("S1", "push-button", {{"1a", "reset"}, {"2a", "minus"}});
    // RESET moves from plus to a net of its own, which only the button ties to minus.
    auto bench = *wired.share();
    const Hole reset = wired.holeOf("reset");
    bench.parts[static_cast<std::size_t>(bench.partIndex("U1"))].leads[3] = Hole{reset.board, reset.line, 49};
    const auto runner = makeRunner();
    Inputs inputs;
    inputs.presses = {{"S1", 0.02, 0.03}};
    runner->setInputs(inputs);
    runner->setBench(1, std::make_shared<const Bench>(bench));
    const auto out = [&] { return pinnedValue(*runner->snapshot(), {"M1", VoltsAt{wired.holeOf("out")}, {}}).value; };
    const auto highs = [&](double from, double until) {
        int high = 0;
        for (double second = from; second < until; second += 1e-4) {
            runner->advanceTo(second);
            high += out() > 2;
        }
        return high;
    };
    EXPECT_GT(highs(0.005, 0.02), 50);
    EXPECT_EQ(highs(0.0202, 0.03), 0);
    EXPECT_GT(highs(0.0305, 0.04), 30);
}

// 3.3 V high at 5 V while it gives 100 mA, 0.1 V low while it takes 5 mA (typical figures of the data sheets, from memory).
TEST(Timer555, ItsOutputLosesWhatTheDataSheetSays) {
    const auto driven = [](std::string_view trigger, std::string_view to, double ohm) {
        WiredBench wired = wiredSupply(5);
        wired
            .part("U1", "timer-555",
                  {{"GND", "minus"},
                   {"TRIG", trigger},
                   {"OUT", "out"},
                   {"RESET", "plus"},
                   {"THRES", trigger},
                   {"VCC", "plus"}})
            .part("RL", "resistor", {{"1", "out"}, {"2", to}}, {{"resistance", ohm}});
        Running run(wired);
        run.to(1e-3);
        return run.volt("out");
    };
    EXPECT_NEAR(driven("minus", "minus", 33), 3.3, 0.1);
    EXPECT_NEAR(driven("plus", "plus", 980), 0.1, 0.06);
}

}  // namespace
}  // namespace tiepoint
