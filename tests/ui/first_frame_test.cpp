// A bench that is opened: its first live frame comes without ids and tags, which take a while to
// place; they stand right after it, and a picture for paper never waits for them.

#include "desk.h"
#include "panel_bench.h"
#include "ui/paint/words_layer.h"

#include <functional>

namespace tiepoint::ui {
namespace {

/// Hears of each paint of a viewport.
class PaintSpy : public QObject {
public:
    explicit PaintSpy(std::function<void()> heard) : heard_(std::move(heard)) {}
    bool eventFilter(QObject*, QEvent* event) override {
        if (event->type() == QEvent::Paint) heard_();
        return false;
    }

private:
    std::function<void()> heard_;
};

class FirstFrameTest : public Desk {
protected:
    FirstFrameTest() {
        Views views;
        views.readings = true;
        view.setViews(views);
        view.viewport()->installEventFilter(&spy);
    }
    void look() {
        if (!view.picture().live() || bench().parts.size() < 30) return;
        hadTags.push_back(view.picture().netTags != nullptr);
        if (hadTags.size() > 1) return;
        first = view.picture();
        onPaper = view.wholePicture();
    }
    std::vector<bool> hadTags;  ///< at each paint of the live panel
    Picture first, onPaper;     ///< at the first of them
    PaintSpy spy{[this] { look(); }};
};

TEST_F(FirstFrameTest, ComesBeforeTheTagsWhichFollowAtOnce) {
    open(harbourPanel());
    ASSERT_TRUE(QTest::qWaitFor([&] { return hadTags.size() >= 2 && hadTags.back(); }));
    EXPECT_FALSE(hadTags.front());
    ASSERT_FALSE(view.picture().wordsToCome);
    Picture eager = view.picture();
    eager.arrangeTags();
    ASSERT_TRUE(eager.netTags);
    EXPECT_EQ(*view.picture().netTags, *eager.netTags);
    EXPECT_FALSE(wordsInput(eager, wordGround(eager)).ids.empty());
    EXPECT_TRUE(wordsInput(first, wordGround(first)).ids.empty());
    EXPECT_FALSE(wordsInput(onPaper, wordGround(onPaper)).ids.empty());
    ASSERT_TRUE(onPaper.netTags) << "a picture for paper is whole at any time";
    EXPECT_EQ(onPaper.netTags->size(), eager.netTags->size());
}

TEST_F(FirstFrameTest, AnEditKeepsItsTagsInEveryFrame) {
    open(harbourPanel());
    ASSERT_TRUE(QTest::qWaitFor([&] { return !hadTags.empty() && hadTags.back(); }));
    hadTags.clear();
    ASSERT_FALSE(document.push({"Remove X3", {Remove{"X3"}}}));
    ASSERT_TRUE(waitForAnswer());
    ASSERT_TRUE(QTest::qWaitFor([&] { return !hadTags.empty(); }));
    for (const bool had : hadTags) EXPECT_TRUE(had);
}

}  // namespace
}  // namespace tiepoint::ui
