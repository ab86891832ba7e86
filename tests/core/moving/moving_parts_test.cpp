// Motor, relay, buzzers, signal source and logic probe through time, against data sheets and closed forms. Sources stand at each test.

#include "support/running_bench.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace tiepoint {
namespace {

using test::Running;
using test::WiredBench;
using test::wiredSupply;

WiredBench drivenMotor(double volt) {
    WiredBench wired = wiredSupply(volt);
    wired.part("MO1", "motor", {{"1", "plus"}, {"2", "minus"}});
    return wired;
}
constexpr double kTurnsAMinute = 60 / (2 * std::numbers::pi);  // of a radian a second

// A motor of size 130 at 6 V: 9100 +/- 1800 turns a minute and at most 70 mA free, at most 500 mA held fast (shop sheet).
TEST(Motor, RunsAsItsSheetSays) {
    const WiredBench wired = drivenMotor(6);
    Running run(wired);
    double most = 0;
    for (int k = 1; k <= 100; ++k) {
        run.to(k * 1e-3);
        most = std::max(most, run.ampere("MO1", "1"));
    }
    EXPECT_NEAR(most, 0.5, 0.02);
    EXPECT_LE(most, 0.5);
    run.to(5);
    const double free = run.told("MO1", "rotor") * kTurnsAMinute;
    EXPECT_NEAR(free, 9100, 1800);
    EXPECT_LE(run.ampere("MO1", "1"), 0.070);
    // Energy: what goes in heats the winding, rubs, and stirs the air.
    const double speed = run.told("MO1", "rotor"), ampere = run.ampere("MO1", "1");
    EXPECT_NEAR(6 * ampere, 12 * ampere * ampere + 2.7e-4 * speed + 1e-9 * speed * speed, 1e-4);
}

// Without friction the speed follows 1 - exp(-t / T) with T = J R / k2, once the winding's current stands (closed form).
TEST(Motor, SpeedsUpAsTheClosedFormSays) {
    WiredBench wired = wiredSupply(6);
    wired.part("MO1", "motor", {{"1", "plus"}, {"2", "minus"}}, {{"friction", 0.0}, {"inductance", 1e-6}});
    Running run(wired);
    const double most = (6 / 5.4e-3), time = 4e-7 * (12 + 0.01) / (5.4e-3 * 5.4e-3);
    for (const double share : {0.2, 1.0, 2.0, 4.0}) {
        run.to(share * time);
        EXPECT_NEAR(run.told("MO1", "rotor"), most * (1 - std::exp(-share)), 1e-3 * most) << share;
    }
}

// Half the voltage gives about half the speed and half the stall current (common practice).
TEST(Motor, GoesTheOtherWayWithItsWiresExchanged) {
    const WiredBench wired = drivenMotor(3);
    Running run(wired);
    run.to(4);
    const double forwards = run.told("MO1", "rotor");
    EXPECT_NEAR(forwards * kTurnsAMinute, 9500.0 / 2, 600);
    WiredBench turned = wiredSupply(3);
    turned.part("MO1", "motor", {{"2", "plus"}, {"1", "minus"}});
    Running back(turned);
    back.to(4);
    EXPECT_NEAR(back.told("MO1", "rotor"), -forwards, 1e-3 * forwards);
}

TEST(Motor, StandsWhereItGetsTooLittle) {
    const WiredBench wired = drivenMotor(0.3);  // 25 mA: less than its friction takes
    Running run(wired);
    run.to(3);
    EXPECT_LT(run.told("MO1", "rotor"), 10);
    EXPECT_NEAR(run.ampere("MO1", "1"), 0.025, 0.003);
}

TEST(Motor, KeepsTurningThroughAnEdit) {
    const WiredBench wired = drivenMotor(6);
    Running run(wired);
    run.to(2);
    const double before = run.told("MO1", "rotor");
    Bench edited = *wired.share();
    edited.title = "edited";
    run.runner().setBench(2, std::make_shared<const Bench>(edited));
    run.to(2.001);
    EXPECT_NEAR(run.told("MO1", "rotor"), before, 0.01 * before);
    EXPECT_NEAR(run.runner().state().of("MO1", Memory::Speed), before, 0.01 * before);
}

// Songle SRD: 71.4 mA at 5 V, pulls in at 3.75 V at most, drops out at 0.5 V at least; operates within 10 ms, releases within 5 ms.
TEST(Relay, PullsInAndDropsOutWithinItsSheet) {
    const auto contact = [](double volt) {
        WiredBench wired = wiredSupply(volt);
        wired.part("K1", "relay",
                   {{"coil1", "plus"}, {"coil2", "minus"}, {"common", "c"}, {"open", "o"}, {"closed", "n"}});
        Running run(wired);
        run.to(0.1);
        return run.told("K1", "armature");
    };
    EXPECT_EQ(contact(3.75), 1);
    EXPECT_EQ(contact(0.5), 0);
    EXPECT_EQ(contact(5), 1);

    WiredBench wired = wiredSupply(5);
    wired.part("S1", "push-button", {{"1a", "plus"}, {"2a", "coil"}})
        .part("K1", "relay",
              {{"coil1", "coil"}, {"coil2", "minus"}, {"common", "plus"}, {"open", "o"}, {"closed", "n"}})
        .part("R1", "resistor", {{"1", "o"}, {"2", "minus"}}, {{"resistance", 1000}})
        .part("R2", "resistor", {{"1", "n"}, {"2", "minus"}}, {{"resistance", 1000}});
    Inputs inputs;
    inputs.presses = {{"S1", 0.1, 0.2}};
    Running run(wired, inputs);
    run.to(0.05);
    EXPECT_NEAR(run.volt("n"), 5, 0.01);
    EXPECT_LT(run.volt("o"), 0.01);
    const auto open = [&] { return run.volt("o") > 2.5; };
    const auto in = run.rises(0.05, 0.15, 1e-4, open);
    ASSERT_EQ(in.size(), 1u);
    EXPECT_GT(in[0], 0.103);
    EXPECT_LT(in[0], 0.110);
    EXPECT_NEAR(run.ampere("K1", "coil1"), 0.0714, 0.0072);
    EXPECT_LT(run.volt("n"), 0.01);
    const auto out = run.rises(0.15, 0.25, 1e-4, [&] { return !open(); });
    ASSERT_EQ(out.size(), 1u);
    EXPECT_LE(out[0], 0.205 + 1e-4);
}

// Its own closed contact in series with the coil: it must run, and go on running.
TEST(Relay, BuzzesByItself) {
    WiredBench wired = wiredSupply(5);
    wired.part("K1", "relay", {{"coil1", "n"}, {"coil2", "minus"}, {"common", "plus"}, {"open", "o"}, {"closed", "n"}});
    Running run(wired);
    const auto pulled = [&] { return run.told("K1", "armature") > 0.5; };
    const auto early = run.rises(0, 0.5, 2e-4, pulled), late = run.rises(2, 2.5, 2e-4, pulled);
    EXPECT_GT(early.size(), 20u);
    EXPECT_NEAR(static_cast<double>(early.size()), static_cast<double>(late.size()), 2);
}

// CUI CT-1205CL: 4 to 7 V, at most 30 mA.
TEST(Buzzer, TheActiveOneTakesItsCurrentOneWayOnly) {
    WiredBench wired = wiredSupply(5);
    wired.part("BZ1", "buzzer-active", {{"+", "plus"}, {"-", "minus"}})
        .part("BZ2", "buzzer-active", {{"-", "plus"}, {"+", "minus"}});
    Running run(wired);
    EXPECT_NEAR(run.ampere("BZ1", "+"), 0.025, 0.001);
    EXPECT_NEAR(run.ampere("BZ2", "+"), 0, 1e-6);
}

// 47 ohm at 5 V of square wave: at most 50 mA in the mean (CUI CD-1206: 40 mA), and the pitch of what drives it.
TEST(Buzzer, ThePassiveOneFollowsItsSignal) {
    for (const double hertz : {200.0, 2400.0}) {
        WiredBench wired;
        wired
            .part("G1", "signal-source", {{"out", "out"}, {"-", "minus"}},
                  {{"waveform", "square"},
                   {"frequency", hertz},
                   {"amplitude", 2.5},
                   {"offset", 2.5},
                   {"outputResistance", 1.0}})
            .part("BZ1", "buzzer-passive", {{"+", "out"}, {"-", "minus"}});
        Running run(wired);
        run.to(0.3);
        EXPECT_NEAR(run.told("BZ1", "sounder"), hertz, 0.01 * hertz);
        double sum = 0;
        constexpr int kReadings = 400;
        for (int k = 1; k <= kReadings; ++k) {
            run.to(0.3 + k * 10 / hertz / kReadings);
            sum += run.ampere("BZ1", "+");
        }
        EXPECT_LT(sum / kReadings, 0.0535);
        EXPECT_GT(sum / kReadings, 0.040);
    }
    WiredBench steady = wiredSupply(3);
    steady.part("BZ1", "buzzer-passive", {{"+", "plus"}, {"-", "minus"}});
    Running run(steady);
    run.to(0.5);
    EXPECT_EQ(run.told("BZ1", "sounder"), 0);
}

// Against the closed form: a triangle and a sine about an offset, behind 50 ohm into 50 ohm; and what an RC low-pass leaves of a sine.
TEST(SignalSource, GivesWhatItsKnobsSay) {
    for (const double hertz : {0.1, 50.0, 1e3, 100e3}) {
        for (const char* shape : {"sine", "triangle", "square"}) {
            WiredBench wired;
            wired
                .part("G1", "signal-source", {{"out", "out"}, {"-", "minus"}},
                      {{"waveform", shape}, {"frequency", hertz}, {"amplitude", 4.0}, {"offset", 1.0}})
                .part("R1", "resistor", {{"1", "out"}, {"2", "minus"}}, {{"resistance", 50}});
            Running run(wired);
            for (int k = 1; k < 400; ++k) {
                const double second = k * 0.0731 / hertz, phase = std::fmod(k * 0.0731, 1.0);
                run.to(second);
                const double triangle = phase < 0.25 ? 4 * phase : phase < 0.75 ? 2 - 4 * phase : 4 * phase - 4;
                double expected = std::sin(2 * std::numbers::pi * phase);
                if (std::string_view(shape) == "triangle") expected = triangle;
                if (std::string_view(shape) == "square") expected = phase < 0.25 || phase >= 0.75 ? 1 : -1;
                // Half of it arrives, the milliohm of its offset aside.
                ASSERT_NEAR(run.volt("out"), (1 + 4 * expected) / 2, 2e-3) << shape << " " << hertz << " " << second;
            }
        }
    }
    WiredBench wired;
    wired.part("G1", "signal-source", {{"out", "out"}, {"-", "minus"}}, {{"frequency", 1000.0}, {"amplitude", 1.0}})
        .part("R1", "resistor", {{"1", "out"}, {"2", "rc"}}, {{"resistance", 950}})
        .part("C1", "ceramic-capacitor", {{"1", "rc"}, {"2", "minus"}}, {{"capacitance", 1e-6}});
    Running run(wired);
    double most = 0;
    for (double second = 0.02; second < 0.022; second += 2e-6) {
        run.to(second);
        most = std::max(most, run.volt("rc"));
    }
    const double turn = 2 * std::numbers::pi * 1000 * 1000 * 1e-6;
    EXPECT_NEAR(most, 1 / std::sqrt(1 + turn * turn), 5e-4);
}

/// Edges of a contact with a load, seen every microsecond for ten milliseconds about a press or a release.
int edgesAround(Running& run, double second) {
    int edges = 0;
    run.to(second - 1e-3);
    bool before = run.volt("out") > 2.5;
    for (int k = 0; k < 11000; ++k) {
        run.to(second - 1e-3 + k * 1e-6);
        const bool now = run.volt("out") > 2.5;
        edges += now != before;
        before = now;
    }
    return edges;
}

TEST(ContactBounce, AButtonBouncesWhereItIsToldTo) {
    for (const char* bounce : {"none", "short", "long"}) {
        WiredBench wired = wiredSupply(5);
        wired.part("S1", "push-button", {{"1a", "plus"}, {"2a", "out"}}, {{"bounce", bounce}})
            .part("R1", "resistor", {{"1", "out"}, {"2", "minus"}}, {{"resistance", 1000}});
        Inputs inputs;
        inputs.presses = {{"S1", 0.1, 0.2}};
        Running run(wired, inputs);
        const bool bounces = std::string_view(bounce) != "none";
        EXPECT_EQ(edgesAround(run, 0.1), bounces ? 11 : 1) << bounce;
        EXPECT_GT(run.volt("out"), 4.9);
        EXPECT_EQ(edgesAround(run, 0.2), bounces ? 11 : 1) << bounce;
        EXPECT_LT(run.volt("out"), 0.1);
    }
}

// 74-series levels: high from 2.0 V, low to 0.8 V (common practice).
TEST(LogicProbe, TellsHighLowNeitherAndPulses) {
    const auto told = [](double volt) {
        WiredBench wired = wiredSupply(5);
        wired.part("PS2", "bench-supply", {{"+", "tip"}, {"-", "minus"}}, {{"voltage", volt}})
            .part("LP1", "logic-probe", {{"tip", "tip"}, {"+", "plus"}, {"-", "minus"}}, {{"logic", "ttl"}});
        Running run(wired);
        run.to(1);
        return run.told("LP1", "level");
    };
    EXPECT_EQ(told(2.1), 1);
    EXPECT_EQ(told(0.7), 2);
    EXPECT_EQ(told(1.4), 0);

    // A pulse of 10 microseconds shows for a tenth of a second.
    WiredBench wired = wiredSupply(5);
    wired.part("S1", "push-button", {{"1a", "plus"}, {"2a", "tip"}})
        .part("R1", "resistor", {{"1", "tip"}, {"2", "minus"}}, {{"resistance", 1000}})
        .part("LP1", "logic-probe", {{"tip", "tip"}, {"+", "plus"}, {"-", "minus"}});
    Inputs inputs;
    inputs.presses = {{"S1", 0.5, 0.5 + 10e-6}};
    Running run(wired, inputs);
    run.to(0.4);
    EXPECT_EQ(run.told("LP1", "level"), 2);
    run.to(0.55);
    EXPECT_EQ(run.told("LP1", "level"), 2 + 4);
    run.to(0.65);
    EXPECT_EQ(run.told("LP1", "level"), 2);
}

}  // namespace
}  // namespace tiepoint
