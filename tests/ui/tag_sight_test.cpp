// Tags stay in sight while the view is zoomed in: they come to its edge along their own leaders, and go back where they stood.

#include "ui/paint/tag_sight.h"

#include "desk.h"
#include "ui/paint/tag_ground.h"

#include <algorithm>

namespace tiepoint::ui {
namespace {

class TagSightTest : public Desk {
protected:
    TagSightTest() {
        Bench bench = beacon();
        bench.pinned = {{"M1", VoltsAt{test::holeAt("A.b14")}, {}}};
        Views views;
        views.readings = true;
        view.setViews(views);
        open(std::move(bench));
    }
    const std::vector<NetTag>& tags() const { return *view.picture().netTags; }
    QRectF sight() const { return view.viewportTransform().inverted().mapRect(QRectF(view.viewport()->rect())); }
    void zoomTo(Point mm, int steps) {
        for (int i = 0; i < steps; ++i) view.zoomAt(view.fromMm(mm), 1.25);
        QTest::qWait(400);  // the zoom settles, then the tags
    }
};

TEST_F(TagSightTest, ATagWhoseRingIsSeenIsSeenItself) {
    ASSERT_TRUE(view.picture().netTags);
    const auto before = tags();
    for (const NetTag& tag : before) {
        view.fitBench();
        zoomTo(tag.ring, 7);
        ASSERT_FALSE(sight().contains(toQt(tag.frame))) << "the test needs a tag out of sight";
        const auto now = std::ranges::find(tags(), tag.net, &NetTag::net);
        ASSERT_NE(now, tags().end());
        EXPECT_EQ(now->ring, tag.ring);
        EXPECT_TRUE(sight().contains(toQt(now->frame))) << now->text.toStdString();
        EXPECT_GT(now->ring.x, now->frame.left);
        EXPECT_LT(now->ring.x, now->frame.right());
        EXPECT_FALSE(toQt(now->frame).adjusted(-1, -1, 1, 1).contains(toQt(now->ring))) << "its leader is kept";
        for (const NetTag& other : tags())
            EXPECT_TRUE(other.net == tag.net || !toQt(other.frame).intersects(toQt(now->frame)));
    }
    view.fitBench();
    QTest::qWait(400);
    ASSERT_EQ(tags().size(), before.size());
    for (std::size_t i = 0; i < before.size(); ++i)
        EXPECT_EQ(tags()[i].frame, before[i].frame) << "back where it stood";
}

TEST_F(TagSightTest, APinnedReadingToo) {
    zoomTo(*holeMm(bench(), test::holeAt("A.c14")), 7);
    const PinnedTag* tag = view.picture().pinnedTag("M1");
    ASSERT_TRUE(tag);
    EXPECT_TRUE(sight().contains(tag->frame));
}

TEST_F(TagSightTest, FollowsWhenThePanIsOver) {
    const NetTag tag = tags().front();
    zoomTo(tag.ring, 7);
    drag(view.viewport()->rect().center(), view.viewport()->rect().center() + QPoint(60, 40), Qt::MiddleButton);
    QTest::qWait(300);
    const auto now = std::ranges::find(tags(), tag.net, &NetTag::net);
    ASSERT_NE(now, tags().end());
    EXPECT_TRUE(sight().contains(toQt(now->frame)));
}

TEST_F(TagSightTest, PaperShowsThemWhereTheyStand) {
    const auto before = tags();
    const auto pinned = *view.picture().pinned;
    zoomTo(before.front().ring, 7);
    ASSERT_NE(tags(), before);
    const Picture paper = view.wholePicture();
    ASSERT_TRUE(paper.netTags && paper.pinned);
    // The letters are as large as they are seen, so places differ; bands are those outside of the boards.
    for (const NetTag& tag : *paper.netTags) EXPECT_FALSE(toQt(tag.frame).intersects(toQt(paper.table->boardsMm)));
    for (const PinnedTag& tag : *paper.pinned) EXPECT_FALSE(tag.frame.intersects(toQt(paper.table->boardsMm)));
}

}  // namespace
}  // namespace tiepoint::ui
