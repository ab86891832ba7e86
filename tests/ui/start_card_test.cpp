// The start card: every harbour bench opens from it and runs, and the card never stands in the way.

#include "core/base/embedded.h"
#include "window_bench.h"

#include <gtest/gtest.h>

#include <set>

namespace tiepoint::ui {
namespace {

std::size_t harbourBenches() {
    std::size_t count = 0;
    for (const EmbeddedFile& file : embeddedFiles()) count += file.name.starts_with("benches/");
    return count;
}

TEST(StartCard, ShowsEveryHarbourBenchAndOpensIt) {
    WindowBench bench;
    MainWindow& window = bench.window();
    window.showStartCard();
    ASSERT_TRUE(window.startCard());
    const std::size_t count = window.startCard()->benches().size();
    ASSERT_EQ(count, harbourBenches());
    ASSERT_GE(count, 9u);
    std::set<std::string> titles;
    for (std::size_t i = 0; i < count; ++i) {
        window.showStartCard();
        BenchKey* key = window.startCard()->benches()[i];
        const QString title = key->text();
        WindowBench::click(key);
        EXPECT_FALSE(window.startCard()) << "opening closes the card";
        EXPECT_EQ(QString::fromStdString(window.document().bench()->title), title);
        EXPECT_FALSE(window.document().isModified());
        EXPECT_TRUE(window.document().filePath().isEmpty()) << "saving must ask for a name";
        ASSERT_TRUE(bench.waitForAnswer()) << title.toStdString();
        EXPECT_EQ(window.live().snapshot()->status(), Status::Solved) << title.toStdString();
        titles.insert(title.toStdString());
    }
    EXPECT_EQ(titles.size(), count);
}

TEST(StartCard, DrawsAPictureOfEachBench) {
    WindowBench bench;
    bench.window().showStartCard();
    const auto& keys = bench.window().startCard()->benches();
    EXPECT_TRUE(WindowBench::waitFor([&] { return std::ranges::all_of(keys, &BenchKey::isDrawn); }));
}

TEST(StartCard, NewBenchGivesAHalfBoardWithItsSupply) {
    WindowBench bench;
    bench.window().showStartCard();
    WindowBench::click(bench.window().startCard()->newKey());
    EXPECT_FALSE(bench.window().startCard());
    EXPECT_EQ(*bench.window().document().bench(), makeNewBench());
}

TEST(StartCard, TheFirstPressOnTheBenchClosesIt) {
    WindowBench bench;
    bench.window().showStartCard();
    QTest::mouseClick(bench.window().view().viewport(), Qt::LeftButton, {}, QPoint(3, 3));
    EXPECT_FALSE(bench.window().startCard());
}

TEST(StartCard, EscapeClosesIt) {
    WindowBench bench;
    bench.window().showStartCard();
    QTest::keyClick(bench.window().startCard(), Qt::Key_Escape);
    EXPECT_FALSE(bench.window().startCard() && bench.window().startCard()->isVisible());
}

}  // namespace
}  // namespace tiepoint::ui
