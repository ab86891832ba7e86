// Flags of overloads stay among what lies on the table, so that a window that shows all of it shows them.

#include "support/compact_bench.h"
#include "ui/paint/overload.h"
#include "window_bench.h"

namespace tiepoint::ui {
namespace {

/// An LED straight across the supply in that column.
Bench overloaded(const std::string& board, int column) {
    const std::string at = std::to_string(column), next = std::to_string(column + 1);
    return test::compactBench(board + "; PS1 a" + std::to_string(column < 4 ? 12 : 1) + " j" +
                              std::to_string(column < 4 ? 12 : 1) + " 9 3; D1 c" + at + " c" + next + " red; W1 b" +
                              std::to_string(column < 4 ? 12 : 1) + " a" + at + " red; W2 i" +
                              std::to_string(column < 4 ? 12 : 1) + " a" + next + " black");
}

TEST(OverloadFlags, LieInSightInEveryColumnOfEveryBoard) {
    for (const auto& [board, columns] : {std::pair("mini", 17), std::pair("half", 30), std::pair("full", 63)}) {
        for (int column = 2; column < columns; column += 2) {
            Picture picture;
            const auto bench = std::make_shared<const Bench>(overloaded(board, column));
            picture.snapshot = evaluate(bench, {});
            picture.layout = picture.snapshot->layout;
            picture.theme = &theme(ThemeName::Day);
            picture.arrangeTable();
            Clearance clearance(picture);
            const auto flags = placeFlags(picture, clearance);
            ASSERT_FALSE(flags.empty()) << board << ' ' << column;
            const QRectF all = toQt(picture.table->allMm).adjusted(-3, -3, 3, 3);
            for (const Flag& flag : flags) {
                EXPECT_TRUE(all.contains(flag.frame)) << board << ' ' << column << ' ' << flag.words.toStdString();
                EXPECT_FALSE(flag.frame.contains(flag.collarAt));
            }
        }
    }
}

TEST(OverloadFlags, StayInTheSmallestWindow) {
    WindowBench desk({900, 600});
    for (const int column : {2, 20, 40, 61}) {
        desk.window().document().reset(overloaded("full", column), {});
        desk.window().view().fitBench();
        ASSERT_TRUE(desk.waitForAnswer());
        const BenchView& view = desk.window().view();
        Clearance clearance(view.picture());
        const auto flags = placeFlags(view.picture(), clearance);
        ASSERT_FALSE(flags.empty());
        for (const Flag& flag : flags)
            EXPECT_TRUE(QRectF(view.viewport()->rect()).contains(view.viewportTransform().mapRect(flag.frame)))
                << column << ' ' << flag.words.toStdString();
    }
}

}  // namespace
}  // namespace tiepoint::ui
