// What hands do at given times, and what parts remember.

#include "core/instant/inputs.h"
#include "core/instant/state.h"

#include <gtest/gtest.h>

#include <limits>

namespace tiepoint {
namespace {

constexpr double kNever = std::numeric_limits<double>::infinity();

TEST(Inputs, SurroundingsAreThoseOfAClassroom) {
    const Inputs inputs;
    EXPECT_EQ(inputs.surroundings.lightLux, 300);
    EXPECT_EQ(inputs.surroundings.temperatureCelsius, 25);
    EXPECT_EQ(inputs.timeScale, 1);
}

TEST(Inputs, APressHoldsFromItsFirstInstantToItsLast) {
    Inputs inputs;
    inputs.presses = {{"S1", 0.5, 0.8}, {"S1", 2.0}};
    for (const auto& [second, held] :
         {std::pair{0.4, false}, {0.5, true}, {0.79, true}, {0.8, false}, {2.0, true}, {1e9, true}})
        EXPECT_EQ(inputs.isHeldAt("S1", second), held) << second;
    EXPECT_FALSE(inputs.isHeldAt("S2", 0.6));
}

TEST(Inputs, PressesAloneCountForThePartsThatTheyName) {
    Inputs inputs;
    inputs.held = {"S1", "S2"};
    inputs.presses = {{"S1", 1, 2}};
    EXPECT_FALSE(inputs.isHeldAt("S1", 0)) << "its press comes later";
    EXPECT_TRUE(inputs.isHeldAt("S2", 0));
    EXPECT_EQ(inputs.at(0).held, (std::set<std::string, std::less<>>{"S2"}));
    EXPECT_EQ(inputs.at(1).held, (std::set<std::string, std::less<>>{"S1", "S2"}));
    EXPECT_TRUE(inputs.at(1).presses.empty());
}

TEST(Inputs, TheNextPressIsTheFirstThatBeginsOrEnds) {
    Inputs inputs;
    EXPECT_EQ(inputs.nextPressAfter(0), kNever);
    inputs.presses = {{"S1", 0.5, 0.8}, {"S2", 0.6}};
    const double changes[] = {0.5, 0.6, 0.8, kNever};
    double second = 0;
    for (const double next : changes) {
        EXPECT_EQ(inputs.nextPressAfter(second), next);
        second = next;
    }
}

TEST(State, IsOfAPartItsSortAndItsPlace) {
    State state;
    state.values[{"C1", Memory::Voltage}] = 3;
    state.values[{"U1", Memory::Bit, 1}] = 1;
    EXPECT_EQ(state.of("C1", Memory::Voltage), 3);
    EXPECT_EQ(state.of("C1", Memory::Current), 0);
    EXPECT_EQ(state.of("U1", Memory::Bit, 1), 1);
    EXPECT_EQ(state.of("U1", Memory::Bit), 0);
    EXPECT_EQ(state.of("RT1", Memory::Temperature, 0, 25), 25) << "where nothing is remembered";
}

TEST(State, WarmthAndBitsDriveNothing) {
    EXPECT_TRUE(holdsEnergy(Memory::Voltage));
    EXPECT_TRUE(holdsEnergy(Memory::Current));
    EXPECT_TRUE(holdsEnergy(Memory::Speed));
    EXPECT_FALSE(holdsEnergy(Memory::Temperature));
    EXPECT_FALSE(holdsEnergy(Memory::Bit));
}

}  // namespace
}  // namespace tiepoint
