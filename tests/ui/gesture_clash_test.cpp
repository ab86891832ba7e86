// What can't be built is refused beside the pointer, by mouse and by keys, naming the thing and the hole.

#include "core/bench/jumper_routes.h"
#include "core/edit/clashes.h"
#include "core/edit/copies.h"
#include "desk.h"

namespace tiepoint::ui {
namespace {

class ClashGestureTest : public Desk {
protected:
    /// A resistor, a knob and a jumper with room round them.
    static Bench workbench() {
        return test::BenchBuilder()
            .board("A", "half")
            .part("R1", "resistor", {{"1", "A.c8"}, {"2", "A.c14"}})
            .part("RV1", "potentiometer", {{"1", "A.f18"}, {"wiper", "A.f20"}, {"2", "A.f22"}})
            .jumper("W1", "A.b3", "A.h3")
            .build();
    }
    void select(const char* id) { view.setSelection({QString::fromLatin1(id)}); }
    /// The words beside the pointer while something is dragged from place to place; nothing may have changed after it.
    std::string refusedDrag(QPoint from, QPoint to) {
        const auto before = document.bench();
        dragAndHold(from, to);
        EXPECT_TRUE(marks().refused);
        const std::string words = marks().say;
        release(to);
        EXPECT_EQ(document.bench(), before);
        EXPECT_EQ(marks().say, words) << "the words stay for a moment";
        return words;
    }
};

TEST_F(ClashGestureTest, AnEndGoesBesideACoveredHoleAndSaysSo) {
    const struct {
        const char *to, *words, *taken;
    } cases[] = {
        {"A.c11", "c11 lies under R1; b11 is the same metal", "A.b11"},
        {"A.c9", "c9 lies under a bare leg of R1; b9 is the same metal", "A.b9"},
        {"A.d11", "", "A.d11"},  // right beside the body
    };
    for (const auto& c : cases) {
        open(workbench());
        dragAndHold(at("A.h3"), at(c.to));
        EXPECT_FALSE(marks().refused);
        EXPECT_TRUE(said().endsWith(QString::fromLatin1(c.words))) << said().toStdString();
        release(at(c.to));
        EXPECT_EQ(bench().jumpers[0].ends[1], JumperEnd(test::holeAt(c.taken)));
    }
}

TEST_F(ClashGestureTest, ANewJumperGoesBesideACoveredHoleAndSaysSo) {
    open(workbench());
    dragAndHold(at("A.a25"), at("A.g20"));
    EXPECT_TRUE(said().contains("g20 lies under RV1; h20 is the same metal")) << said().toStdString();
    release(at("A.g20"));
    EXPECT_EQ(bench().jumpers.back().ends[1], JumperEnd(test::holeAt("A.h20")));
}

TEST_F(ClashGestureTest, ABodyIsRefusedOverWhatIsPluggedIn) {
    Bench bench_ = workbench();
    bench_.jumpers.push_back({"W2", {test::holeAt("A.g11"), test::holeAt("A.a28")}, 0, false, {}});
    open(std::move(bench_));
    const QPoint nineColumns = at("A.f9") - at("A.f18");
    EXPECT_EQ(refusedDrag(bodyOf("RV1") + QPoint(0, 3 * (at("A.g1") - at("A.f1")).y() / 2),
                          bodyOf("RV1") + QPoint(0, 3 * (at("A.g1") - at("A.f1")).y() / 2) + nineColumns),
              "its body would cover g11, where W2 is plugged in");
}

TEST_F(ClashGestureTest, ALegIsRefusedThroughABody) {
    Bench bench_ = workbench();
    Part led = makePart(*findKind("led"), "D1");
    led.leads = {test::holeAt("A.h10"), test::holeAt("A.h11")};
    Part more = makePart(*findKind("resistor"), "R2");
    more.leads = {test::holeAt("A.h2"), test::holeAt("A.j7")};
    bench_.parts.push_back(led);
    bench_.parts.push_back(more);
    bench_.jumpers.clear();
    open(std::move(bench_));
    select("R2");
    EXPECT_EQ(refusedDrag(at("A.j7"), at("A.h14")), "its leg in h14 would run through D1");
}

TEST_F(ClashGestureTest, KeysAreRefusedToo) {
    open(workbench());
    select("W1");
    for (int i = 0; i < 8; ++i) key(Qt::Key_Right);  // b11 and h11
    ASSERT_EQ(bench().jumpers[0].ends[0], JumperEnd(test::holeAt("A.b11")));
    key(Qt::Key_Down);
    EXPECT_EQ(said().toStdString(), "c11 lies under R1; b11 is the same metal");
    EXPECT_EQ(bench().jumpers[0].ends[0], JumperEnd(test::holeAt("A.b11")));
}

TEST_F(ClashGestureTest, AWireThatIsDrawnShowsTheArcThatItWillHave) {
    Bench bench_ = workbench();
    Part led = makePart(*findKind("led"), "D1");
    led.leads = {test::holeAt("A.i8"), test::holeAt("A.i9")};
    bench_.parts.push_back(led);
    open(std::move(bench_));
    drag(at("A.i4"), at("A.i13"));
    ASSERT_EQ(bench().jumpers.size(), 2U);
    const Table& table = *view.picture().table;
    const Body body = *tiepoint::bodyOf(bench().parts[2], table.parts[2], 2);
    const Point first = *holeMm(bench(), test::holeAt("A.i4")), second = *holeMm(bench(), test::holeAt("A.i13"));
    EXPECT_FALSE(arcRunsThrough(body, first, second, table.jumperArcs[1]));
    EXPECT_TRUE(Occupancy(bench()).all().empty());
}

TEST_F(ClashGestureTest, OnADockedBoardTheBoardIsNamed) {
    Bench bench_ = workbench();
    Board board = bench_.boards[0];
    board.id = "B";
    board.atX = 40;
    bench_.boards.push_back(board);
    Part more = makePart(*findKind("resistor"), "R2");
    more.leads = {test::holeAt("B.c8"), test::holeAt("B.c14")};
    bench_.parts.push_back(more);
    open(std::move(bench_));
    select("W1");
    dragAndHold(at("A.h3"), at("B.c11"));
    EXPECT_TRUE(said().endsWith("B.c11 lies under R2; B.b11 is the same metal")) << said().toStdString();
    release(at("B.c11"));
}

TEST_F(ClashGestureTest, ACopyFindsAPlaceWhereItCanBeBuilt) {
    open(workbench());
    const auto copies = copiesOnto(bench(), bench(), {"RV1", "R1"});
    ASSERT_TRUE(copies.ok());
    ASSERT_FALSE(document.push(copies->edit));
    EXPECT_TRUE(Occupancy(bench()).all().empty());
}

}  // namespace
}  // namespace tiepoint::ui
