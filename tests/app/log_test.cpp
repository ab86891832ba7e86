// The log: in the user's state folder, more of it with --verbose, and never a reason to fail.

#include "app/run_program.h"

#include <gtest/gtest.h>

namespace tiepoint::test {
namespace {

TEST(Log, LiesInTheStateFolder) {
    const auto state = scratchFolder() / "state";
    EXPECT_EQ(runProgram({"nets", harbourBench("beacon-lamp")}, {"XDG_STATE_HOME=" + state.string()}).code, 0);
    EXPECT_NE(readFile(state / "tiepoint" / "tiepoint.log").find("beacon-lamp.bench.json"), std::string::npos);

    EXPECT_EQ(runProgram({"nets", harbourBench("beacon-lamp")}).code, 0);
    EXPECT_TRUE(std::filesystem::exists(scratchFolder() / ".local" / "state" / "tiepoint" / "tiepoint.log"));
}

TEST(Log, SpeaksOnStandardErrorWhenAsked) {
    const Ran quiet = runProgram({"nets", harbourBench("beacon-lamp")});
    EXPECT_EQ(quiet.error, "");
    for (const auto& arguments : {std::vector<std::string>{"--verbose", "nets", harbourBench("beacon-lamp")},
                                  std::vector<std::string>{"nets", harbourBench("beacon-lamp"), "--verbose"}}) {
        const Ran verbose = runProgram(arguments);
        EXPECT_EQ(verbose.output, quiet.output);
        EXPECT_NE(verbose.error.find("beacon-lamp.bench.json"), std::string::npos) << verbose.error;
    }
}

TEST(Log, KeepsTheReasonOfAnError) {
    const auto state = scratchFolder() / "error-state";
    EXPECT_EQ(runProgram({"nets", "no-such.bench.json"}, {"XDG_STATE_HOME=" + state.string()}).code, 2);
    EXPECT_NE(readFile(state / "tiepoint" / "tiepoint.log").find("no-such.bench.json"), std::string::npos);
}

TEST(Log, NeverFailsTheProgram) {
    // A folder that can't be made, and none at all.
    for (const auto& world :
         {std::vector<std::string>{"XDG_STATE_HOME=/proc/nowhere"}, std::vector<std::string>{"HOME="}}) {
        const Ran ran = runProgram({"nets", harbourBench("beacon-lamp")}, world);
        EXPECT_EQ(ran.code, 0);
        EXPECT_EQ(ran.error, "");
    }
}

}  // namespace
}  // namespace tiepoint::test
