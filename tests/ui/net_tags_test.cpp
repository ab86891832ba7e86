// Volts of nets on tags beside the boards: off everything else, each on a leader of its own that ends on its own metal; calm while figures
// and the pointer change.

#include "core/base/embedded.h"
#include "core/bench/bench_file.h"
#include "core/edit/placement.h"
#include "desk.h"
#include "panel_bench.h"
#include "ui/paint/label_places.h"
#include "ui/paint/live_layers.h"
#include "ui/paint/packages/package_painter.h"
#include "ui/paint/part_scenes.h"
#include "ui/paint/tag_ground.h"
#include "ui/paint/tag_keeper.h"
#include "ui/view/room_mode.h"

#include <chrono>
#include <set>

namespace tiepoint::ui {
namespace {

class NetTags : public Desk {
protected:
    const std::vector<NetTag>& tags() const {
        static const std::vector<NetTag> kNone;
        return view.picture().netTags ? *view.picture().netTags : kNone;
    }
    /// The tag of the net in a hole, or null.
    const NetTag* tagAt(std::string_view hole) const {
        const Layout& layout = *view.picture().layout;
        const int net = layout.netOfHole(layout.holeIndex(test::holeAt(hole)));
        for (const NetTag& tag : tags())
            if (tag.net == net) return &tag;
        return nullptr;
    }
    /// All frames and rings, without the figures.
    std::vector<std::pair<Rect, Point>> places() const {
        std::vector<std::pair<Rect, Point>> places;
        for (const NetTag& tag : tags()) places.emplace_back(tag.frame, tag.ring);
        return places;
    }
    void turnOver() {
        Views views = view.views();
        views.turned = true;
        view.setViews(views);
    }

    void expectRingOnItsOwnHole(const NetTag& tag) const {
        const Picture& picture = view.picture();
        const auto hole = nearestHole(picture.bench(), picture.table->seen(tag.ring), 0.01);
        ASSERT_TRUE(hole) << tag.text.toStdString();
        EXPECT_EQ(picture.layout->netOfHole(picture.layout->holeIndex(*hole)), tag.net) << toString(*hole);
        EXPECT_FALSE(SeenMetal(picture).isForeignAt(tag.ring, tag.net)) << toString(*hole);
        EXPECT_GT(tag.ring.x, tag.frame.left);
        EXPECT_LT(tag.ring.x, tag.frame.right());
    }

    void expectLaws() const {
        const Picture& picture = view.picture();
        std::vector<std::pair<std::string, QRectF>> kept;
        for (const Board& board : picture.bench().boards) kept.emplace_back(board.id, toQt(board.frameMm()));
        if (picture.table->turned) kept.assign(1, {"boards", toQt(picture.table->boardsMm)});
        for (int part = 0; part < static_cast<int>(picture.bench().parts.size()); ++part) {
            const PartScene scene = sceneOf(picture, part);
            kept.emplace_back(scene.part.id,
                              findPackagePainter(scene.part.kind->package->name)->body(scene).boundingRect());
        }
        Clearance clearance(picture);
        for (const Label& id : placeIds(picture, clearance)) {
            kept.emplace_back(id.text.toStdString(), id.frame);
            for (const NetTag& tag : tags())
                EXPECT_FALSE(id.frame.contains(toQt(tag.ring))) << id.text.toStdString() << " on a ring";
        }
        for (const NetTag& tag : tags()) {
            expectRingOnItsOwnHole(tag);
            for (const auto& [what, frame] : kept)
                EXPECT_FALSE(frame.intersects(toQt(tag.frame))) << tag.text.toStdString() << " on " << what;
            for (const NetTag& other : tags())
                EXPECT_TRUE(&other == &tag || !toQt(other.frame).intersects(toQt(tag.frame)));
        }
    }
};

Bench embeddedBench(std::string_view name) {
    const auto file = std::ranges::find(embeddedFiles(), name, &EmbeddedFile::name);
    if (file == embeddedFiles().end()) test::slip("the bench", name);
    return std::move(readBench(file->text)).value().bench;
}

TEST_F(NetTags, KeepTheirLawsOnTheHarboursBenches) {
    for (const EmbeddedFile& file : embeddedFiles()) {
        if (!std::string_view(file.name).starts_with("benches/")) continue;
        SCOPED_TRACE(file.name);
        open(embeddedBench(file.name));
        EXPECT_FALSE(tags().empty());
        expectLaws();
        view.room().setProjecting(true);
        expectLaws();
        view.room().setProjecting(false);
        turnOver();
        expectLaws();
        view.setViews({});
    }
}

TEST_F(NetTags, OnACrowdedPanelSomeGiveWayAndTheRestKeepTheLaws) {
    open(harbourPanel());
    EXPECT_EQ(bench().parts.size(), 35u);
    EXPECT_EQ(bench().jumpers.size(), 30u);
    EXPECT_GE(tags().size(), 12u);
    expectLaws();
    turnOver();
    expectLaws();
    view.setViews({});
    view.room().setProjecting(true);
    EXPECT_GE(tags().size(), 6u);
    expectLaws();
}

TEST_F(NetTags, WhatIsSelectedKeepsItsTags) {
    open(harbourPanel());
    view.room().setProjecting(true);
    std::string without;
    const auto ground = tagGround(view.picture());
    const Layout& layout = *view.picture().layout;
    for (const Part& each : bench().parts) {
        if (each.kind->name != "led" || tagAt(toString(*each.leads[0]))) continue;
        const int net = layout.netOfHole(layout.holeIndex(*each.leads[0]));
        if (!ground->feet[static_cast<std::size_t>(net)].empty()) without = each.id;
    }
    ASSERT_FALSE(without.empty()) << "there are more nets than tags";
    const Hole anode = *part(without).leads[0];
    view.setSelection({QString::fromStdString(without)});
    EXPECT_TRUE(tagAt(toString(anode))) << without;
    expectLaws();
}

TEST_F(NetTags, StayWhereTheyAreWhileFiguresAndThePointerChange) {
    open(beacon());
    const auto before = places();
    ASSERT_GE(before.size(), 4u);
    for (const char* hole : {"A.c10", "A.h17", "A.top+20", "A.a25"}) {
        moveTo(at(hole));
        EXPECT_EQ(places(), before) << hole;
    }
    std::set<std::string> figures;
    for (const bool held : {true, false, true}) {
        live.setHeld("S1", held);
        ASSERT_TRUE(waitForAnswer());
        const NetTag* anode = tagAt("A.h16");
        ASSERT_TRUE(anode);
        figures.insert(anode->text.toStdString());
        for (const NetTag& tag : tags()) {
            const bool stood =
                std::any_of(before.begin(), before.end(), [&](const auto& place) { return place.second == tag.ring; });
            EXPECT_TRUE(stood) << tag.text.toStdString();
        }
        EXPECT_EQ(tags().size(), before.size());
    }
    EXPECT_EQ(figures.size(), 2u);
}

TEST_F(NetTags, AnEditElsewhereMovesNone) {
    open(beacon());
    const auto before = places();
    drag(at("A.a26"), at("A.a29"));  // a jumper that joins nothing
    ASSERT_TRUE(waitForAnswer());
    ASSERT_EQ(bench().jumpers.size(), 3u);
    EXPECT_EQ(places(), before);
}

TEST_F(NetTags, WhatIsJoinedToNothingSaysSo) {
    open(test::BenchBuilder(beacon())
             .part("R2", "resistor", {{"1", "A.c22"}, {"2", "A.c27"}}, {{"resistance", 100}})
             .jumper("A.d22", "A.d20")
             .build());
    const NetTag* floating = tagAt("A.c22");
    ASSERT_TRUE(floating);
    EXPECT_TRUE(floating->isFloating);
    EXPECT_EQ(floating->text, "joined to nothing");
}

TEST_F(NetTags, ThereAreNoneWhereReadingsAreOff) {
    open(beacon());
    Views views;
    views.readings = false;
    view.setViews(views);
    EXPECT_TRUE(tags().empty());
    views.voltage = true;
    view.setViews(views);
    EXPECT_FALSE(tags().empty());
}

TEST_F(NetTags, TheLeaderIsADarkLineInACasingInEveryTheme) {
    open(beacon());
    for (const ThemeName name : {ThemeName::Day, ThemeName::Dark, ThemeName::Projector}) {
        SCOPED_TRACE(static_cast<int>(name));
        view.setThemeName(name);
        const NetTag* tag = tagAt("A.top+7");
        ASSERT_TRUE(tag);
        const bool above = tag->frame.top < tag->ring.y;
        // Between the tag and the board there is nothing but the table.
        const double y = above ? (tag->frame.bottom() + view.picture().table->boardsMm.top) / 2
                               : (tag->frame.top + view.picture().table->boardsMm.bottom()) / 2;
        const QImage seen = view.viewport()->grab().toImage();
        const double ratio = view.devicePixelRatioF();
        const QPointF middle = view.fromMm({tag->ring.x, y}) * ratio;
        const QColor table = seen.pixelColor(middle.toPoint() + QPoint(12, 0));
        const QColor line = seen.pixelColor(middle.toPoint());
        EXPECT_GT(std::abs(qGray(line.rgb()) - qGray(table.rgb())), 60);
        int dark = 0;
        for (int x = -8; x <= 8; ++x) {
            const QColor here = seen.pixelColor(middle.toPoint() + QPoint(x, 0));
            dark += std::abs(qGray(here.rgb()) - qGray(line.rgb())) < 40;
        }
        EXPECT_GE(dark, 1);
        EXPECT_LE(dark, 5) << "a thin line";
    }
}

TEST_F(NetTags, AHoveredHoleSaysItsAddress) {
    open(beacon());
    moveTo(at("A.b8"));
    EXPECT_EQ(hoverWords(view.picture()), "b8: 5.00 V above minus");
    moveTo(at("A.b28"));
    EXPECT_EQ(hoverWords(view.picture()), "b28");
    open(harbourPanel());
    moveTo(at("B.b4"));
    EXPECT_EQ(hoverWords(view.picture()), "B.b4: 5.00 V above minus");
}

TEST_F(NetTags, AFigureThatChangesCostsLittle) {
    open(harbourPanel());
    Picture picture = view.picture();
    TagKeeper keeper;
    keeper.arrange(picture);
    const auto before = picture.netTags;
    double least = 1e9;
    for (int i = 0; i < 10; ++i) {
        const auto begin = std::chrono::steady_clock::now();
        keeper.arrange(picture);
        const std::chrono::duration<double, std::milli> took = std::chrono::steady_clock::now() - begin;
        least = std::min(least, took.count());
    }
    EXPECT_EQ(picture.netTags, before) << "the same list";
    EXPECT_LT(least, 5) << "ms; meant to be well under one";
}

}  // namespace
}  // namespace tiepoint::ui
