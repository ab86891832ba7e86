// Keeps what you did: the program killed by SIGKILL at random moments of random editing. A hundred rounds: tests/bench/kill_bench.cpp.

#include "kill_round.h"

#include <QTemporaryDir>

#include <gtest/gtest.h>

namespace tiepoint::ui {
namespace {

constexpr int kRounds = 6;

TEST(Kill, LosesTheLastGestureAtMostAndLeavesNoFileUnreadable) {
    std::mt19937 random(5);
    for (unsigned round = 1; round <= kRounds; ++round) {
        SCOPED_TRACE(round);
        QTemporaryDir folder;
        const KillReport report = killRound(QApplication::applicationFilePath(), folder.path(), round,
                                            100 + static_cast<int>(random() % 900));
        ASSERT_TRUE(report.ran);
        EXPECT_TRUE(report.killed);
        EXPECT_EQ(report.unreadable, "");
        // A state that was never told is one newer than the last told one: nothing is lost.
        EXPECT_LE(report.lost, 1) << report.states << " states";
    }
}

}  // namespace
}  // namespace tiepoint::ui
