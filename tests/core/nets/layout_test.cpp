// Layouts: nets against a general-purpose graph library's connected components over holes on thousands of random benches, common
// practice about what is joined, and the metal as pieces between joints.

#include "core/nets/layout.h"

#include "support/build_bench.h"

#include <boost/graph/adjacency_list.hpp>
#include <boost/graph/connected_components.hpp>
#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <random>
#include <set>

namespace tiepoint {
namespace {

using test::BenchBuilder;

bool oneNet(const Layout& layout, std::string_view a, std::string_view b) {
    return layout.netOfHole(layout.holeIndex(test::holeAt(a))) == layout.netOfHole(layout.holeIndex(test::holeAt(b)));
}

// --- Common practice -----------------------------------------------------------------------------------------------------------

struct Pair {
    const char* a;
    const char* b;
    bool joined;
    const char* why;
};

void expectPairs(const Layout& layout, std::span<const Pair> pairs) {
    for (const Pair& pair : pairs)
        EXPECT_EQ(oneNet(layout, pair.a, pair.b), pair.joined) << pair.a << " " << pair.b << ": " << pair.why;
}

TEST(Layout, JoinsWhatABoardJoins) {
    // Common practice: five holes of a half column are one strip, the gap parts e from f, rails run along the board.
    const auto through = buildLayout(BenchBuilder().board("A", "full").board("B", "full", 0, 30).share());
    const Pair pairs[] = {
        {"A.a10", "A.e10", true, "a half column is one strip"},
        {"A.f10", "A.j10", true, "a half column is one strip"},
        {"A.e10", "A.f10", false, "the gap"},
        {"A.a10", "A.a11", false, "the next column"},
        {"A.top+1", "A.top+50", true, "a rail joins end to end"},
        {"A.top+1", "A.top-1", false, "the other rail"},
        {"A.top+1", "A.bottom+1", false, "the rail of the same sign across the board"},
        {"A.a10", "B.a10", false, "another board"},
    };
    expectPairs(*through, pairs);
    EXPECT_EQ(through->netCount, 2 * (63 * 2 + 4));
}

TEST(Layout, BreaksSplitRailsInTheMiddle) {
    struct Split {
        const char* kind;
        int half, end;
    };
    for (const Split& split : {Split{"full", 25, 50}, Split{"half", 12, 25}}) {
        const auto layout = buildLayout(BenchBuilder().board("A", split.kind, 0, 0, Rails::Split).share());
        for (const char* rail : {"top+", "top-", "bottom+", "bottom-"}) {
            const auto hole = [&](int n) { return fmt::format("A.{}{}", rail, n); };
            EXPECT_TRUE(oneNet(*layout, hole(1), hole(split.half))) << split.kind << rail;
            EXPECT_FALSE(oneNet(*layout, hole(split.half), hole(split.half + 1))) << split.kind << rail;
            EXPECT_TRUE(oneNet(*layout, hole(split.half + 1), hole(split.end))) << split.kind << rail;
        }
    }
}

TEST(Layout, JoinsLegsOfAPushButtonThatFaceEachOther) {
    // Common practice, and data sheets of 6 x 6 mm tactile switches: two joined pairs; only pressing joins the pairs.
    const auto layout =
        buildLayout(BenchBuilder()
                        .board("A", "half")
                        .part("S1", "push-button", {{"1a", "A.e4"}, {"1b", "A.f4"}, {"2a", "A.e6"}, {"2b", "A.f6"}})
                        .share());
    const Pair pairs[] = {
        {"A.a4", "A.j4", true, "1a and 1b are one piece of metal"},
        {"A.a6", "A.j6", true, "2a and 2b are one piece of metal"},
        {"A.a4", "A.a6", false, "open until pressed"},
        {"A.a4", "A.j6", false, "diagonal legs"},
    };
    expectPairs(*layout, pairs);
}

TEST(Layout, JoinsThroughHangingLegsAndSockets) {
    const auto layout = buildLayout(BenchBuilder()
                                        .board("A", "half")
                                        .part("PS1", "usb-supply", {})
                                        .part("S1", "push-button", {{"1a", "A.e4"}})
                                        .jumper("PS1.GND1", "A.top-1")
                                        .jumper("PS1.GND2", "A.bottom-1")
                                        .share());
    EXPECT_TRUE(oneNet(*layout, "A.top-5", "A.bottom-5")) << "both minus sockets are one piece of metal";
    const Part& button = layout->bench->parts[1];
    const int leg1a = layout->leadIndex(1, button.kind->leadIndex("1a")),
              leg1b = layout->leadIndex(1, button.kind->leadIndex("1b"));
    EXPECT_EQ(layout->netOfLead[leg1a], layout->netOfLead[leg1b]);
    EXPECT_EQ(layout->holeOfLead[leg1b], -1);
}

// --- Against a graph library ---------------------------------------------------------------------------------------------------

Bench randomBench(std::mt19937& random) {
    const auto pick = [&](int count) { return static_cast<int>(random() % static_cast<unsigned>(count)); };
    constexpr const char* kKinds[] = {"full", "half", "mini"};
    constexpr double kBoardPitches = 30;
    BenchBuilder builder;
    const int boards = 1 + pick(3);
    for (int b = 0; b < boards; ++b) {
        builder.board(fmt::format("B{}", b), kKinds[pick(3)], 0, b * kBoardPitches,
                      pick(2) ? Rails::Split : Rails::Through);
    }
    Bench bench = builder.build();

    std::set<Hole> taken;
    for (int i = pick(6); i > 0; --i) {
        Part button = makePart(*findKind("push-button"), fmt::format("S{}", i));
        const Board& board = bench.boards[pick(boards)];
        const int column = 1 + pick(board.kind->columns - 2);
        const Hole legs[] = {{board.id, Line::E, column},
                             {board.id, Line::F, column},
                             {board.id, Line::E, column + 2},
                             {board.id, Line::F, column + 2}};
        if (std::any_of(std::begin(legs), std::end(legs), [&](const Hole& h) { return taken.contains(h); })) continue;
        for (int leg = 0; leg < 4; ++leg) {
            if (pick(8) == 0) continue;  // hangs free
            button.leads[leg] = legs[leg];
            taken.insert(legs[leg]);
        }
        bench.parts.push_back(std::move(button));
    }
    const auto freeHole = [&] {
        while (true) {
            const Board& board = bench.boards[pick(boards)];
            const BoardKind& kind = *board.kind;
            const Line line = static_cast<Line>(pick(kRowCount + (kind.hasRails() ? kRailCount : 0)));
            Hole hole{board.id, line, 1 + pick(isRail(line) ? kind.railHoles : kind.columns)};
            if (taken.insert(hole).second) return hole;
        }
    };
    for (int i = pick(40); i > 0; --i)
        bench.jumpers.push_back({fmt::format("W{}", i), {freeHole(), freeHole()}, 0, false, {}});
    return bench;
}

/// Vertices: all holes, then all leads. Edges by the geometry of the board alone, not by strip numbers.
std::vector<int> componentsOverHoles(const Layout& layout) {
    boost::adjacency_list<boost::vecS, boost::vecS, boost::undirectedS> graph(
        static_cast<std::size_t>(layout.holeCount() + layout.leadCount()));
    const auto join = [&](int a, int b) {
        boost::add_edge(static_cast<std::size_t>(a), static_cast<std::size_t>(b), graph);
    };
    const auto vertex = [&](const std::string& board, Line line, int n) { return layout.holeIndex({board, line, n}); };
    for (const Board& board : layout.bench->boards) {
        for (int column = 1; column <= board.kind->columns; ++column) {
            for (Line line : {Line::A, Line::B, Line::C, Line::D, Line::F, Line::G, Line::H, Line::I}) {
                join(vertex(board.id, line, column),
                     vertex(board.id, static_cast<Line>(static_cast<int>(line) + 1), column));
            }
        }
        for (Line rail : {Line::TopPlus, Line::TopMinus, Line::BottomPlus, Line::BottomMinus}) {
            for (int n = 1; n < board.kind->railHoles; ++n) {
                const bool broken = board.rails == Rails::Split && n == board.kind->railHoles / 2;
                if (!broken) join(vertex(board.id, rail, n), vertex(board.id, rail, n + 1));
            }
        }
    }
    for (int lead = 0; lead < layout.leadCount(); ++lead) {
        if (layout.holeOfLead[lead] >= 0) join(layout.holeCount() + lead, layout.holeOfLead[lead]);
    }
    for (std::size_t p = 0; p < layout.bench->parts.size(); ++p) {
        const int first = layout.holeCount() + layout.firstLead[p];
        for (const auto& group : layout.bench->parts[p].kind->joined) join(first + group[0], first + group[1]);
    }
    for (const Jumper& jumper : layout.bench->jumpers) {
        join(layout.holeIndex(std::get<Hole>(jumper.ends[0])), layout.holeIndex(std::get<Hole>(jumper.ends[1])));
    }
    std::vector<int> component(static_cast<std::size_t>(layout.holeCount() + layout.leadCount()));
    boost::connected_components(graph, component.data());
    return component;
}

TEST(Layout, MatchesAGraphLibraryOnRandomBenches) {
    std::mt19937 random(41);
    constexpr int kBenches = 3000;
    for (int trial = 0; trial < kBenches; ++trial) {
        const auto layout = buildLayout(std::make_shared<const Bench>(randomBench(random)));
        const std::vector<int> expected = componentsOverHoles(*layout);
        std::map<int, int> netOfComponent;
        std::set<int> nets;
        for (std::size_t v = 0; v < expected.size(); ++v) {
            const int index = static_cast<int>(v);
            const int net =
                index < layout->holeCount() ? layout->netOfHole(index) : layout->netOfLead[index - layout->holeCount()];
            nets.insert(net);
            ASSERT_EQ(netOfComponent.try_emplace(expected[v], net).first->second, net) << "trial " << trial;
        }
        ASSERT_EQ(nets.size(), netOfComponent.size()) << "trial " << trial;  // no net spans two components
        ASSERT_EQ(static_cast<int>(nets.size()), layout->netCount) << "trial " << trial;
    }
}

// --- Numbers and metal ---------------------------------------------------------------------------------------------------------

TEST(Layout, NumbersHolesBothWays) {
    const auto layout = buildLayout(
        BenchBuilder().board("A", "full").board("M", "mini", 70, 0).board("B", "half", 0, 30, Rails::Split).share());
    ASSERT_EQ(layout->holeCount(), 830 + 170 + 400);
    for (int hole = 0; hole < layout->holeCount(); ++hole) ASSERT_EQ(layout->holeIndex(layout->holeAt(hole)), hole);
    EXPECT_EQ(layout->holeIndex({"Z", Line::A, 1}), -1);
    EXPECT_EQ(layout->holeIndex({"M", Line::TopPlus, 1}), -1);
    EXPECT_EQ(layout->holeIndex({"A", Line::A, 64}), -1);
}

TEST(Layout, KeepsNetsOrderedByTheirSmallestStrip) {
    std::mt19937 random(5);
    for (int trial = 0; trial < 100; ++trial) {
        const auto layout = buildLayout(std::make_shared<const Bench>(randomBench(random)));
        int next = 0;
        for (int net : layout->netOfStrip) {
            ASSERT_LE(net, next);
            next += net == next;
        }
    }
}

TEST(Layout, ManyBoardsNeedWideIndices) {
    // Past 2^16 strips narrow indices would wrap; the rails of the last board must still be its own.
    constexpr int kBoards = 520;
    BenchBuilder builder;
    for (int b = 0; b < kBoards; ++b) builder.board(fmt::format("B{}", b), "full", 0, 30.0 * b);
    builder.jumper("B0.a1", "B519.a1");
    const auto layout = buildLayout(builder.share());
    EXPECT_EQ(layout->netCount, kBoards * 130 - 1);
    EXPECT_TRUE(oneNet(*layout, "B0.b1", "B519.b1"));
    EXPECT_FALSE(oneNet(*layout, "B0.b2", "B519.b2"));
}

TEST(Layout, MakesAPieceBetweenNeighboursOfAStrip) {
    const auto layout = buildLayout(BenchBuilder()
                                        .board("A", "half")
                                        .part("R1", "resistor", {{"1", "A.c5"}, {"2", "A.c9"}})
                                        .part("R2", "resistor", {{"1", "A.e5"}, {"2", "A.e9"}})
                                        .jumper("A.a5", "A.a12")
                                        .share());
    std::set<std::pair<std::string, std::string>> strips;
    for (const Piece& piece : layout->pieces) {
        if (piece.kind != PieceKind::Strip) continue;
        strips.emplace(shortName(layout->holeAt(layout->joints[piece.from].hole)),
                       shortName(layout->holeAt(layout->joints[piece.to].hole)));
        EXPECT_EQ(piece.owner, layout->stripOfHole[layout->joints[piece.from].hole]);
    }
    EXPECT_EQ(strips, (std::set<std::pair<std::string, std::string>>{{"a5", "c5"}, {"c5", "e5"}, {"c9", "e9"}}));
}

TEST(Layout, WeighsJumpersByWireAndContacts) {
    // 22 AWG copper is 52.96 mOhm/m (0.017241 ohm mm2/m over a wire 0.6438 mm thick); 20 mOhm a contact is the model's own figure.
    const auto layout =
        buildLayout(BenchBuilder().board("A", "full").jumper("A.a1", "A.a3").jumper("A.b1", "A.b60").share());
    constexpr double kContacts = 0.040, kOhmPerMm = 52.96e-6;
    const double shortOhm = layout->pieces[layout->pieceOfJumper[0]].ohm,
                 longOhm = layout->pieces[layout->pieceOfJumper[1]].ohm;
    EXPECT_GT(shortOhm, kContacts + 2 * kPitchMm * kOhmPerMm);
    EXPECT_LT(shortOhm, kContacts + 25 * kOhmPerMm);
    EXPECT_GT(longOhm, kContacts + 59 * kPitchMm * kOhmPerMm);
    EXPECT_LT(longOhm, kContacts + 59 * kPitchMm * kOhmPerMm * 1.2);
}

TEST(Layout, BridgesJoinedLeadsToAHub) {
    const auto layout =
        buildLayout(BenchBuilder()
                        .board("A", "half")
                        .part("R1", "resistor", {{"1", "A.c14"}, {"2", "A.c19"}})
                        .part("S1", "push-button", {{"1a", "A.e4"}, {"1b", "A.f4"}, {"2a", "A.e6"}, {"2b", "A.f6"}})
                        .share());
    const int first = layout->firstLead[1];
    EXPECT_EQ(layout->hubOfLead[first], layout->hubOfLead[first + 1]);
    EXPECT_EQ(layout->hubOfLead[first + 2], layout->hubOfLead[first + 3]);
    EXPECT_NE(layout->hubOfLead[first], layout->hubOfLead[first + 2]);
    for (int lead = first; lead < first + 4; ++lead) {
        const Piece& bridge = layout->pieces[layout->pieceOfLead[lead]];
        EXPECT_EQ(bridge.kind, PieceKind::Bridge);
        EXPECT_EQ(bridge.owner, lead);
        EXPECT_EQ(bridge.from, layout->jointOfLead[lead]);
        EXPECT_EQ(bridge.to, layout->hubOfLead[lead]);
        EXPECT_TRUE(layout->joints[bridge.to].hub);
        EXPECT_EQ(layout->partOfLead(lead), 1);
    }
    for (int lead = 0; lead < first; ++lead) {
        EXPECT_EQ(layout->hubOfLead[lead], -1);
        EXPECT_EQ(layout->pieceOfLead[lead], -1);
    }
}

TEST(Layout, MarksNetsThatSomethingIsPluggedInto) {
    const auto layout = buildLayout(BenchBuilder()
                                        .board("A", "half")
                                        .part("PS1", "usb-supply", {})
                                        .jumper("PS1.5V", "A.top+1")
                                        .jumper("A.a1", "A.a2")
                                        .share());
    const auto used = [&](std::string_view hole) {
        return layout->netUsed[layout->netOfHole(layout->holeIndex(test::holeAt(hole)))] != 0;
    };
    EXPECT_TRUE(used("A.top+9"));
    EXPECT_TRUE(used("A.e2"));
    EXPECT_FALSE(used("A.a3"));
    EXPECT_FALSE(layout->netUsed[layout->netOfLead[1]]) << "no jumper is in GND1 or GND2";
}

TEST(Layout, AnEmptyBenchHasALayout) {
    const auto layout = buildLayout(std::make_shared<const Bench>());
    EXPECT_EQ(layout->netCount, 0);
    EXPECT_TRUE(layout->joints.empty());
}

/// Phosphor bronze has about 0.11 ohm mm2/m (from memory): a pitch of a clip of about a square millimetre is 0.3 milliohm.
TEST(Layout, AStripIsAsLongAsTheWayAlongIt) {
    constexpr double kClipOhm = 0.11e-3 * kPitchMm / 1.0;
    const auto layout = buildLayout(BenchBuilder()
                                        .board("A", "half")
                                        .jumper("A.a1", "A.top+1")
                                        .jumper("A.b1", "A.top+2")
                                        .jumper("A.e1", "A.top+6")
                                        .share());
    std::vector<double> ohms;
    for (const Piece& piece : layout->pieces)
        if (piece.kind == PieceKind::Strip) ohms.push_back(piece.ohm);
    std::ranges::sort(ohms);
    ASSERT_EQ(ohms.size(), 4u) << "a to b and b to e, the rail's 1 to 2 and 2 to 6";
    EXPECT_NEAR(ohms[0], kClipOhm, 0.1 * kClipOhm);
    EXPECT_NEAR(ohms[1], ohms[0], 1e-12);
    EXPECT_NEAR(ohms[2], 3 * ohms[0], 1e-12);
    EXPECT_NEAR(ohms[3], 4 * ohms[0], 1e-12) << "counted in holes";
}

}  // namespace
}  // namespace tiepoint
