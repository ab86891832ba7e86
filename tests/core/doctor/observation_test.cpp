// Observations as words of the command line: read, written, refused.

#include "core/doctor/observation.h"

#include "core/doctor/observation_words.h"
#include "support/far_light.h"

#include <gtest/gtest.h>

namespace tiepoint::test {
namespace {

TEST(Observation, IsReadAsItIsWritten) {
    const Bench plan = farLight();
    const Digits pressed = *readHolds(plan, {"S1"});
    for (const char* text : {"D1=dark",
                             "D1=dim",
                             "D1=lit",
                             "D1=always lit",
                             "D1=hot",
                             "R1=hot",
                             "A.c14=5",
                             "A.c14=-0.25",
                             "A.c14=glows",
                             "A.c14=dark",
                             "A.c14~A.c20=beeps",
                             "A.c14~A.c20=silent",
                             "A.c14~A.c20=jumper",
                             "A.c14~A.c20=no jumper",
                             "R1=as planned",
                             "A=as planned",
                             "W2=not as planned",
                             "W1=missing",
                             "D1.anode=A.g21",
                             "W1.2=A.b9",
                             "R1.resistance=3300",
                             "PS1.on=0"}) {
        const auto read = readObservation(plan, text, pressed);
        ASSERT_TRUE(read) << text << ": " << read.error().message;
        EXPECT_EQ(writeObservation(plan, *read), text);
        EXPECT_EQ(read->digits, pressed);
        EXPECT_FALSE(observationInWords(plan, *read).empty());
    }
}

TEST(Observation, VoltsAreReadAsPeopleTypeThem) {
    const Bench plan = farLight();
    for (const auto& [text, volt] : std::vector<std::pair<const char*, double>>{
             {"A.c14=5.0", 5}, {"A.c14=5 V", 5}, {"A.c14=350mV", 0.35}, {"A.c14=-1.5", -1.5}}) {
        const auto read = readObservation(plan, text, restOf(plan));
        ASSERT_TRUE(read) << text;
        EXPECT_DOUBLE_EQ(std::get<SawVolts>(read->what).volt, volt) << text;
    }
    const auto ohms = readObservation(plan, "R1.resistance=3k3", restOf(plan));
    ASSERT_TRUE(ohms);
    EXPECT_DOUBLE_EQ(std::get<SawSetting>(ohms->what).value, 3300);
}

TEST(Observation, WhatCantBeSeenIsRefused) {
    const Bench plan = farLight();
    for (const char* text : {"", "D1", "D1=", "D1=bright", "R1=dark", "D9=dark", "A.c99=5", "A.c14=5 A", "A.c14=nan",
                             "A.c14=1e9", "A.c14~A.c99=beeps", "A.c14~A.c20=loud", "R1=missing", "W1.3=A.b9",
                             "D1.gate=A.b9", "W1.2=B.b9", "PS1.on=2", "A=hot"}) {
        EXPECT_FALSE(readObservation(plan, text, restOf(plan))) << text;
    }
}

TEST(Observation, PositionsAreHeldAndNamed) {
    const Bench plan = farLight();
    EXPECT_EQ(holdsOf(plan, restOf(plan)), std::vector<std::string>());
    const auto pressed = readHolds(plan, {"S1"});
    ASSERT_TRUE(pressed);
    EXPECT_EQ(holdsOf(plan, *pressed), std::vector<std::string>{"S1"});
    EXPECT_EQ(positionInWords(plan, *pressed), "with S1 pressed");
    EXPECT_EQ(*readHolds(plan, {"none"}), restOf(plan));
    for (const char* wrong : {"S9", "R1", "S1=b"}) EXPECT_FALSE(readHolds(plan, {wrong})) << wrong;
}

TEST(Observation, TheBlackTipStandsAtMinus) {
    const Bench plan = farLight();
    EXPECT_EQ(toString(*usualBlackTip(plan)), "A.bottom-3");
    BenchBuilder usb;
    usb.board("A", "half").part("PS1", "usb-supply", {}).jumper("PS1.GND2", "A.top-1");
    EXPECT_EQ(toString(*usualBlackTip(usb.build())), "A.top-1");
    EXPECT_FALSE(minusOfFirstSupply(BenchBuilder().board("A", "half").build()));
}

}  // namespace
}  // namespace tiepoint::test
