// The scene as the model of the table: an item for each thing, exact shapes, what lies over what on either side of the boards, and nets
// that are those of the core's union-find.

#include "core/edit/placement.h"
#include "support/build_bench.h"
#include "ui/paint/note_painter.h"
#include "ui/paint/pixel_sheet.h"
#include "ui/paint/shade.h"
#include "ui/scene/bench_scene.h"
#include "ui/scene/board_item.h"
#include "ui/scene/jumper_item.h"
#include "ui/scene/part_item.h"
#include "ui/scene/slip_items.h"

#include <gtest/gtest.h>

#include <random>

namespace tiepoint::ui {
namespace {

using test::BenchBuilder;
using test::holeAt;

constexpr double kHalfPitchMm = kPitchMm / 2;

/// Two boards, one with split rails, with a part of each manner, a note and a pinned reading.
Bench harbourLights() {
    Bench bench = BenchBuilder()
                      .board("A", "half", 0, 0, Rails::Split)
                      .board("B", "mini", 40, 0)
                      .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}}, {{"voltage", 5}})
                      .part("R1", "resistor", {{"1", "A.c8"}, {"2", "A.c14"}}, {{"resistance", 330}})
                      .part("S1", "push-button", {{"1a", "A.e14"}, {"1b", "A.f14"}, {"2a", "A.e16"}, {"2b", "A.f16"}})
                      .part("D1", "led", {{"anode", "A.h16"}, {"cathode", "A.h19"}})
                      .part("R2", "resistor", {{"1", "A.a20"}, {"2", "A.d26"}}, {{"resistance", 330}})
                      .jumper("W1", "A.top+7", "A.a8")
                      .jumper("W2", "A.b10", "A.d12")
                      .jumper("W3", "A.j19", "B.e4")
                      .build();
    bench.jumpers[1].flat = true;
    bench.notes.push_back({"N1", holeAt("A.a3"), "quay", {}});
    bench.pinned.push_back({"P1", VoltsAt{holeAt("A.j19")}, {}});
    return bench;
}

/// A scene of a bench on its table.
class TableScene : public testing::Test {
protected:
    TableScene() {
        picture.theme = &theme(ThemeName::Day);
        show(harbourLights(), false);
    }
    void show(Bench bench, bool turned) {
        picture.snapshot = evaluate(std::make_shared<const Bench>(std::move(bench)), {});
        picture.layout = picture.snapshot->layout;
        picture.views.turned = turned;
        picture.arrangeTable();
        picture.arrangeTags();
        scene.follow();
    }
    void turn(bool turned) { show(picture.bench(), turned); }

    const Bench& bench() const { return picture.bench(); }
    Point seen(std::string_view hole) const { return picture.seenAt(holeAt(hole)); }
    int netOf(std::string_view hole) const {
        return picture.layout->netOfHole(picture.layout->holeIndex(holeAt(hole)));
    }
    Point bodyOf(std::string_view id) const {
        return picture.table->parts[static_cast<std::size_t>(bench().partIndex(id))].pose.centre;
    }
    template <class Item>
    std::vector<const Item*> itemsOf() const {
        std::vector<const Item*> found;
        for (const QGraphicsItem* item : scene.items(Qt::AscendingOrder)) {
            if (const auto* wanted = dynamic_cast<const Item*>(item)) found.push_back(wanted);
        }
        return found;
    }
    const BenchItem& item(std::string_view id) const {
        for (const BenchItem* found : itemsOf<BenchItem>()) {
            if (found->id() == id) return *found;
        }
        test::slip("the item", id);
    }

    Picture picture;
    BenchScene scene{picture};
};

TEST_F(TableScene, HasAnItemForEachThingAndKeepsItWhileTheThingLasts) {
    EXPECT_EQ(itemsOf<BoardItem>().size(), 2u);
    EXPECT_EQ(itemsOf<PartItem>().size(), 5u);
    EXPECT_EQ(itemsOf<JumperItem>().size(), 3u);
    EXPECT_EQ(itemsOf<NoteItem>().size(), 1u);
    EXPECT_EQ(itemsOf<TagItem>().size(), 1u);
    const BenchItem* kept = &item("D1");
    Bench without = bench();
    std::erase_if(without.parts, [](const Part& part) { return part.id == "R1"; });
    without.notes.clear();
    without.pinned.clear();
    show(without, false);
    EXPECT_EQ(&item("D1"), kept);
    EXPECT_EQ(itemsOf<BenchItem>().size(), 2u + 4u + 3u);
}

TEST_F(TableScene, EveryHoleIsFoundWhereItIsSeenWithTheNetOfTheUnionFind) {
    for (const bool turned : {false, true}) {
        turn(turned);
        const Layout& layout = *picture.layout;
        int open = 0;
        for (int index = 0; index < layout.holeCount(); ++index) {
            const Hole hole = layout.holeAt(index);
            const Under under = scene.under(picture.seenAt(hole));
            if (!under.note.empty() || !under.pinned.empty()) continue;
            ASSERT_EQ(under.hole, hole) << toString(hole);
            const bool covered = !turned && (!under.body.empty() || !under.wire.empty());
            if (covered) continue;
            EXPECT_EQ(under.net, layout.netOfHole(index)) << toString(hole);
            ++open;
        }
        EXPECT_GT(open, layout.holeCount() * 9 / 10);
    }
}

TEST_F(TableScene, ABoardKnowsItsStripsAndRails) {
    const auto& board = dynamic_cast<const BoardItem&>(item("A"));
    EXPECT_EQ(board.stripOf(holeAt("A.a8")), board.stripOf(holeAt("A.e8")));
    EXPECT_NE(board.stripOf(holeAt("A.e8")), board.stripOf(holeAt("A.f8"))) << "the trough parts them";
    EXPECT_EQ(board.stripOf(holeAt("A.top+1")), board.stripOf(holeAt("A.top+12")));
    EXPECT_NE(board.stripOf(holeAt("A.top+12")), board.stripOf(holeAt("A.top+13"))) << "its rails are split";
    EXPECT_EQ(board.netOf(holeAt("A.top+7")), board.netOf(holeAt("A.c8"))) << "W1 joins them";
    EXPECT_EQ(board.netOf(holeAt("A.i19")), dynamic_cast<const BoardItem&>(item("B")).netOf(holeAt("B.a4")))
        << "W3 joins two boards";
}

TEST_F(TableScene, TheFaceOfAHoleReachesHalfAPitch) {
    std::mt19937 random(17);
    std::uniform_real_distribution<double> x(-5, 160), y(-5, 60);
    for (const bool turned : {false, true}) {
        turn(turned);
        for (int i = 0; i < 2000; ++i) {
            const Point at{x(random), y(random)};
            const Under under = scene.under(at);
            if (!under.note.empty() || !under.pinned.empty()) continue;
            EXPECT_EQ(under.hole, nearestHole(bench(), picture.table->seen(at), kHalfPitchMm));
        }
    }
}

TEST_F(TableScene, ShapesAreTighterThanWhatIsPainted) {
    for (const BenchItem* each : itemsOf<BenchItem>()) {
        const QRectF bounds = each->boundingRect(), shape = each->shape().boundingRect();
        EXPECT_TRUE(bounds.contains(shape)) << each->id();
        EXPECT_LT(shape.width() * shape.height(), bounds.width() * bounds.height()) << each->id();
        EXPECT_FALSE(each->contains(bounds.topLeft())) << each->id();
    }
    // A slanting resistor's bounds hold holes that nothing of it touches.
    const Under beside = scene.under(seen("A.d21"));
    EXPECT_TRUE(item("R2").boundingRect().contains(toQt(seen("A.d21"))));
    EXPECT_TRUE(beside.thing().empty());
    EXPECT_EQ(beside.net, netOf("A.d21"));
}

TEST_F(TableScene, UprightAWireLiesOverABodyAndABodyOverHoles) {
    const Under wire = scene.under(seen("A.c11"));
    EXPECT_EQ(wire.wire, "W2");
    EXPECT_EQ(wire.body, "R1");
    EXPECT_EQ(wire.hole, holeAt("A.c11"));
    EXPECT_EQ(wire.net, netOf("A.b10")) << "the wire is meant";
    const Under body = scene.under(seen("A.c10"));
    EXPECT_EQ(body.body, "R1");
    EXPECT_EQ(body.net, -1) << "its body hides the strip";
}

TEST_F(TableScene, TurnedOverTheClipsLieOverWhatStandsOnTheBoard) {
    turn(true);
    const Under clip = scene.under(seen("A.c10"));
    EXPECT_EQ(clip.body, "R1");
    EXPECT_EQ(clip.net, netOf("A.c10"));
    EXPECT_EQ(scene.under(bodyOf("S1")).control, "S1") << "it is pressed through the board";
    EXPECT_EQ(scene.under(seen("A.c11")).net, netOf("A.c11"));
    EXPECT_LT(item("S1").zValue(), item("A").zValue());
    EXPECT_GT(item("PS1").zValue(), item("A").zValue()) << "it stands on the table beside";
}

TEST_F(TableScene, NotesHideEverythingAndTagsAllButNotes) {
    const QRectF slip = noteFrame(picture, 0);
    const Under note = scene.under({slip.center().x(), slip.center().y()});
    EXPECT_EQ(note.note, "N1");
    EXPECT_FALSE(note.hole);
    const QRectF tag = picture.pinned->front().frame;
    const Under pinned = scene.under({tag.center().x(), tag.center().y()});
    EXPECT_EQ(pinned.pinned, "P1");
    EXPECT_FALSE(pinned.hole);
    Bench moved = bench();
    moved.pinned.clear();
    show(moved, false);
    EXPECT_TRUE(scene.under({tag.center().x(), tag.center().y()}).pinned.empty());
}

TEST_F(TableScene, EndsAreGrippedAtOnce) {
    EXPECT_FALSE(scene.under(seen("A.c25")).grip);
    EXPECT_FALSE(scene.under(seen("A.e14")).grip) << "stiff legs go with their body";
    ASSERT_TRUE(scene.under(seen("A.c8")).grip);
    EXPECT_EQ(scene.under(seen("A.c8")).grip->id, "R1");
    ASSERT_TRUE(scene.under(seen("A.a8")).grip);
    EXPECT_TRUE(scene.under(seen("A.a8")).grip->jumper);
    EXPECT_TRUE(scene.under(seen("A.top+3")).grip) << "the cable of a supply always can";
}

TEST_F(TableScene, ABandTakesBodiesAndWiresWhereTheyReallyAre) {
    const Point body = bodyOf("R2");
    const auto around = [](Point at, double mm) { return QRectF(at.x - mm, at.y - mm, 2 * mm, 2 * mm); };
    EXPECT_EQ(scene.touchedBy(around(body, 0.5)), std::vector<std::string>{"R2"});
    EXPECT_EQ(scene.touchedBy(around(seen("A.d22"), 0.5)), std::vector<std::string>{}) << "beside the slanting body";
    EXPECT_EQ(scene.touchedBy(around(seen("A.c11"), 0.5)), std::vector<std::string>{"R1"}) << "W2 only crosses it";
    EXPECT_EQ(scene.touchedBy(around(seen("A.b10"), 0.5)), std::vector<std::string>{"W2"});
    EXPECT_EQ(scene.touchedBy(around(seen("A.top+3"), 0.5)), std::vector<std::string>{}) << "a cable doesn't count";
    EXPECT_EQ(scene.touchedBy(picture.table->parts.empty() ? QRectF() : toQt(picture.table->allMm)).size(), 8u);
}

TEST_F(TableScene, PaintsItselfAsItsItemsSay) {
    constexpr int kPixelsPerMm = 6;
    constexpr int kRounding = 2;  ///< of 255: the scene multiplies the same transform in another order
    const QRectF area = toQt(picture.table->allMm);
    const auto drawn = [&](auto draw) {
        QImage image((area.size() * kPixelsPerMm).toSize(), QImage::Format_RGB32);
        image.fill(Qt::white);
        PixelSheet sheet(image);
        QPainter painter(&sheet);
        painter.setRenderHint(QPainter::Antialiasing);
        draw(painter);
        return image;
    };
    const QImage rendered =
        drawn([&](QPainter& painter) { scene.render(&painter, QRectF(), area, Qt::IgnoreAspectRatio); });
    const QImage painted = drawn([&](QPainter& painter) {
        painter.setClipRect(rendered.rect());
        painter.scale(rendered.width() / area.width(), rendered.height() / area.height());
        painter.translate(-area.topLeft());
        Patches patches;
        scene.addBoards(patches);
        scene.addItems(patches);
        paintPatches(painter, *picture.theme, patches);
    });
    int differing = 0;
    for (int y = 0; y < painted.height(); ++y) {
        for (int x = 0; x < painted.width(); ++x) {
            const QColor a = rendered.pixelColor(x, y), b = painted.pixelColor(x, y);
            const int most =
                std::max({std::abs(a.red() - b.red()), std::abs(a.green() - b.green()), std::abs(a.blue() - b.blue())});
            if (most > kRounding) ++differing;
        }
    }
    EXPECT_EQ(differing, 0);
    EXPECT_NE(rendered.pixelColor(rendered.rect().center()), QColor(Qt::white));
}

}  // namespace
}  // namespace tiepoint::ui
