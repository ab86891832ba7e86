// What can't be on the boards together: told to the hand, naming the thing and the hole, and the same in a file.

#include "core/edit/clashes.h"

#include "core/bench/cable_routes.h"
#include "core/bench/jumper_routes.h"
#include "core/edit/copies.h"
#include "core/edit/placement.h"
#include "support/brute_force.h"
#include "support/compact_bench.h"

#include <gtest/gtest.h>

#include <random>

namespace tiepoint {
namespace {

using test::compactBench;
using test::holeAt;

using Refused = std::optional<std::string>;

/// The last thing of a compact bench, taken off it and put there again by hand.
Refused putLast(std::string_view text, bool flat = false) {
    Bench bench = compactBench(text);
    const bool jumper = text.substr(text.rfind(';') + 1).find(" W") == 0;
    if (!jumper) {
        const Part part = bench.parts.back();
        bench.parts.pop_back();
        return refusal(bench, part);
    }
    Jumper wire = bench.jumpers.back();
    wire.flat = flat;
    bench.jumpers.pop_back();
    return refusal(bench, wire);
}

TEST(Clashes, CoveredHolesTakeNothing) {
    const struct {
        const char* bench;
        Refused words;
    } cases[] = {
        {"half; R1 c8 c14 330; W1 c11 c20", "c11 lies under R1; b11 is the same metal"},
        {"half; R1 c8 c14 330; W1 d11 d20", std::nullopt},  // right beside the body
        {"half; R1 c8 c14 330; PS1 a1 c11 5", "c11 lies under R1; b11 is the same metal"},
        {"half; R1 c8 c14 330; M1 a1 c11", "c11 lies under R1; b11 is the same metal"},
        {"half; D1 h16 h18 red; W1 h17 h25", "h17 lies under D1; g17 is the same metal"},
        {"half; RV1 e7 1000; W1 d9 a20", "d9 lies under RV1; c9 is the same metal"},
        {"half; RV1 e7 1000; D1 d9 b9 red", "its body would overlap RV1"},
        {"half; W1 c11 a20; R1 c8 c14 330", "its body would cover c11, where W1 is plugged in"},
        {"half; PS1 d9 a20 5; RV1 e7 1000", "its body would cover d9, where PS1 is plugged in"},
        {"half; S1 b14; W1 c15 a20", "c15 lies under S1; b15 is the same metal"},
        {"half; S1 b14; W1 c14 a20", std::nullopt},
        {"half; board B half 34; R1 B.c8 B.c14 330; W1 B.c11 a20", "B.c11 lies under R1; B.b11 is the same metal"},
    };
    for (const auto& c : cases) EXPECT_EQ(putLast(c.bench), c.words) << c.bench;
}

TEST(Clashes, LegsRunThroughNothing) {
    const struct {
        const char* bench;
        Refused words;
    } cases[] = {
        {"half; D1 c11 c12 red; R1 c5 c20 330", "its body would overlap D1"},
        {"half; D1 c16 c17 red; R1 c5 c20 330", "its leg in c20 would run through D1"},
        {"half; R1 c5 c20 330; D1 b16 d17 red", "the leg of R1 in c20 would run through it"},
        {"half; R1 c5 c20 330; D1 a16 a17 red", std::nullopt},
        {"half; R1 a18 d30 330; R2 d19 a21 330",
         "its bare leg in a21 would touch that of R1 in a18, which is another piece of metal"},
        {"half; R1 a3 a8 330; W1 a4 top-5", "a4 lies under a bare leg of R1; b4 is the same metal"},
        {"half; R1 a3 a8 330; V1 a4 e4",
         "its bare leg in a4 would touch that of R1 in a3, which is another piece of metal"},
        {"half; W1 a4 top-5; R1 a3 a8 330", "its bare leg in a3 would touch W1 in a4, which is another piece of metal"},
        {"half; W1 a4 b3; R1 a3 a8 330", std::nullopt},   // one net: it may touch
        {"half; R1 d8 g8 330; W1 e8 a20", std::nullopt},  // one strip
    };
    for (const auto& c : cases) EXPECT_EQ(putLast(c.bench), c.words) << c.bench;
}

TEST(Clashes, FlatWiresLieOnTheBoard) {
    const struct {
        const char* bench;
        Refused words;
    } cases[] = {
        {"half; D1 c8 c9 red; W1 c4 c12", "lying flat from c4 to c12 it would run through D1"},
        {"half; S1 e8; W1 d7 g11", "lying flat from d7 to g11 it would run through S1"},
        {"half; R1 a8 e8 330; W1 c4 c12", std::nullopt},  // under what lies raised
        {"half; R1 c8 c14 330; W1 b8 b14", std::nullopt},
        {"half; PS1 c8 a1 5; W1 c4 c12", "lying flat it would cover c8, where PS1 is plugged in"},
        {"half; W2 a20 c8; W1 c4 c12", "lying flat it would cover c8, where W2 is plugged in"},
        {"half; W2 a20 d8; W1 c4 c12", std::nullopt},
    };
    for (const auto& c : cases) EXPECT_EQ(putLast(c.bench, true), c.words) << c.bench;
    Bench bench = compactBench("half; W1 c4 c12");
    bench.jumpers[0].flat = true;
    Part led = makePart(*findKind("led"), "D1");
    led.leads = {holeAt("A.b8"), holeAt("A.b9")};
    EXPECT_EQ(refusal(bench, led), "W1 lies flat there, from c4 to c12");
    const Jumper wire{"W2", {holeAt("A.c8"), holeAt("A.h20")}, 0, false, {}};
    EXPECT_EQ(refusal(bench, wire), "c8 lies under W1; b8 is the same metal");
}

TEST(Clashes, WiresGoRoundOrAreRefused) {
    const struct {
        const char* bench;
        Refused words;
    } cases[] = {
        {"half; R1 c8 c14 330; W1 a11 e11", std::nullopt},  // an arc passes over what lies
        {"half; D1 c8 c9 red; W1 c4 c12", std::nullopt},    // and round what stands
        {"half; RV1 e7 1000; W1 c9 j20", std::nullopt},
        // c9 is a slot between two knobs, hardly broader than a pin.
        {"half; RV1 e7 1000; RV2 a7 1000; W1 c9 j20",
         "RV1 stands in the way from c9 to j20, and there is no way round it"},
        {"half; RV1 e7 1000; W1 c9 j20; RV2 a7 1000", "W1 would find no way round it from c9 to j20"},
        {"half; RV1 e7 1000; RV2 a7 1000; PS1 c9 j20 5", "RV2 stands in the way to c9, and there is no way round it"},
        {"half; RV1 e7 1000; PS1 c9 j20 5; RV2 a7 1000", "the + lead of PS1 would find no way round it to c9"},
        {"half; RV1 e7 1000; RV2 a7 1000; M1 c9 j20", "RV1 stands in the way to c9, and there is no way round it"},
    };
    for (const auto& c : cases) EXPECT_EQ(putLast(c.bench), c.words) << c.bench;
}

TEST(Clashes, WhatMovesTogetherIsNotInItsOwnWay) {
    const Bench bench = compactBench("half; RV1 e7 1000; RV2 a14 1000; W1 c9 j20; W2 c16 j25");
    Bench after = bench;
    for (Part& part : after.parts) part = *shifted(bench, part, 1, 0);
    for (Jumper& jumper : after.jumpers) jumper = *shifted(bench, jumper, 1, 0);
    EXPECT_EQ(refusalOfChange(bench, after), std::nullopt);
    after = bench;
    after.parts[1] = *shifted(bench, bench.parts[1], -7, 0);
    EXPECT_EQ(refusalOfChange(bench, after), "W1 would find no way round it from c9 to j20");
    after.jumpers[1] = *shifted(bench, bench.jumpers[1], 1, 0);
    EXPECT_EQ(refusalOfChange(bench, after), "RV2: W1 would find no way round it from c9 to j20");
    EXPECT_EQ(refusalOfChange(bench, bench), std::nullopt);
}

TEST(Clashes, TheNearestFreeHoleIsOneThatCanBeReached) {
    const Bench bench = compactBench("half; R1 c8 c14 330; W1 b11 b20; R2 g3 g8 330");
    EXPECT_EQ(nearestFreeInStrip(bench, holeAt("A.c11")), holeAt("A.d11"));
    EXPECT_EQ(nearestFreeInStrip(bench, holeAt("A.g4")), holeAt("A.f4"));
    EXPECT_EQ(whyNotFree(bench, holeAt("A.c11")), "c11 lies under R1");
    EXPECT_EQ(whyNotFree(bench, holeAt("A.c9")), "c9 lies under a bare leg of R1");
    EXPECT_EQ(whyNotFree(bench, holeAt("A.c8")), "c8 is taken");
    EXPECT_EQ(whyNotFree(bench, holeAt("A.a8")), std::nullopt);
}

TEST(Clashes, CopiesKeepOffWhatIsThere) {
    const Bench bench = compactBench("half; D1 c8 c10 red; W1 d9 d20");
    const auto copies = copiesOnto(bench, bench, {"D1"});
    ASSERT_TRUE(copies.ok());
    const auto after = apply(bench, copies->edit);
    ASSERT_TRUE(after.ok());
    EXPECT_TRUE(Occupancy(after->bench).all().empty());
}

/// A bench thrown together: valid, and full of clashes.
Bench thrownTogether(std::mt19937& random) {
    const auto pick = [&](int count) { return std::uniform_int_distribution<int>(0, count - 1)(random); };
    Bench bench = compactBench("half; PS1 top+3 bottom-3 5");
    constexpr const char* kKinds[] = {"resistor",      "led",          "diode", "push-button",
                                      "potentiometer", "slide-switch", "lamp"};
    const auto hole = [&] { return Hole{"A", static_cast<Line>(pick(kRowCount)), 1 + pick(30)}; };
    const auto isFree = [&](const std::optional<Hole>& at) { return at && !occupantOf(bench, *at); };
    for (int i = 0; i < 14; ++i) {
        const PartKind& kind = *findKind(kKinds[pick(7)]);
        const Part part = placedAt(bench, makePart(kind, freeId(bench, kind.prefix)), hole(), pick(4));
        if (std::all_of(part.leads.begin(), part.leads.end(), isFree) &&
            !misfit(*kind.package, leadHolesMm(bench, part)))
            bench.parts.push_back(part);
    }
    for (int i = 0; i < 8; ++i) {
        const Hole a = hole(), b = hole();
        if (a == b || !isFree(a) || !isFree(b)) continue;
        bench.jumpers.push_back({freeId(bench, "W"), {a, b}, 0, pick(3) == 0, {}});
    }
    return bench;
}

/// What a hand is refused is what a file is told, thing by thing.
TEST(Clashes, HandAndFileAgree) {
    std::mt19937 random(23);
    int clashing = 0, clear = 0;
    for (int round = 0; round < 60; ++round) {
        const Bench bench = thrownTogether(random);
        const auto all = Occupancy(bench).all();
        const auto names = [&](const std::string& id) {
            return std::any_of(all.begin(), all.end(),
                               [&](const Clash& clash) { return clash.one == id || clash.other == id; });
        };
        for (const Part& part : bench.parts) {
            const auto why = refusal(bench, part);
            // A wire that several bodies pen in gets free by taking one of them away, or it doesn't: then no single one is refused.
            const bool onlyPens =
                std::all_of(
                    all.begin(), all.end(),
                    [&](const Clash& clash) { return clash.other != part.id || clash.kind == ClashKind::NoWay; }) &&
                std::none_of(all.begin(), all.end(), [&](const Clash& clash) { return clash.one == part.id; });
            const bool pensIn = why && why->find("no way round it") != std::string::npos;
            if (pensIn) {  // the file names what stands in the wire's usual way
                EXPECT_TRUE(std::any_of(all.begin(), all.end(),
                                        [](const Clash& each) { return each.kind == ClashKind::NoWay; }))
                    << part.id << " " << *why;
            } else if (why) {
                EXPECT_TRUE(names(part.id)) << part.id << " " << *why;
            } else if (!onlyPens) {
                EXPECT_FALSE(names(part.id)) << part.id;
            }
            ++(why ? clashing : clear);
        }
        for (const Jumper& jumper : bench.jumpers)
            EXPECT_EQ(refusal(bench, jumper).has_value(), names(jumper.id)) << jumper.id;
    }
    EXPECT_GT(clashing, 100);
    EXPECT_GT(clear, 100);
}

/// Whatever stays on a bench that hands built stands clear of everything, by brute force.
TEST(Clashes, WhatHandsBuildStandsClear) {
    constexpr double kUnsure = 0.1;
    std::mt19937 random(29);
    int wires = 0;
    for (int round = 0; round < 12; ++round) {
        const Bench thrown = thrownTogether(random);
        Bench bench = thrown;
        bench.parts.clear();
        bench.jumpers.clear();
        for (const Part& part : thrown.parts)
            if (!refusal(bench, part)) bench.parts.push_back(part);
        for (const Jumper& jumper : thrown.jumpers)
            if (!refusal(bench, jumper)) bench.jumpers.push_back(jumper);
        const Table table = arrange(bench);
        for (int i = 0; i < static_cast<int>(bench.parts.size()); ++i) {
            const auto body = bodyOf(bench.parts[i], table.parts[i], i);
            if (!body) continue;
            const auto edge = test::edgeOf(body->outline);
            for (int j = 0; j < static_cast<int>(bench.parts.size()); ++j) {
                if (j == i) continue;
                for (const Leg& leg : legsOf(bench.parts[j], table.parts[j], j)) {
                    const auto way = test::straight(leg.tip, leg.exit);
                    EXPECT_GT(test::leastSpare(body->outline, way, kLegRoomMm, {leg.tip}), -kUnsure);
                }
                for (const auto& lead : bench.parts[j].leads) {
                    if (!lead) continue;
                    EXPECT_GT(test::farOutside(edge, *holeMm(bench, *lead)), -kUnderEdgeMm - kUnsure);
                }
            }
            for (std::size_t w = 0; w < bench.jumpers.size(); ++w) {
                const Jumper& jumper = bench.jumpers[w];
                if (jumper.flat ? body->raised : !body->isTall()) continue;
                const Point first = endMm(bench, table, jumper.ends[0]), second = endMm(bench, table, jumper.ends[1]);
                std::vector<Point> way;
                for (int t = 0; t <= 400; ++t) way.push_back(arcPoint(first, second, table.jumperArcs[w], t / 400.0));
                EXPECT_GT(test::leastSpare(body->outline, way, kWireRoomMm, {first, second}), -kUnsure)
                    << jumper.id << " " << bench.parts[i].id;
                ++wires;
            }
        }
    }
    EXPECT_GT(wires, 100);
}

}  // namespace
}  // namespace tiepoint
