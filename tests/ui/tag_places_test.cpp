// Tags with leaders keep their laws whatever they are asked for: random rows of wishes, and a few by hand.

#include "ui/paint/tag_places.h"

#include <gtest/gtest.h>

#include <chrono>
#include <cmath>
#include <random>

namespace tiepoint::ui {
namespace {

constexpr double kBoardWidth = 165, kBoardHeight = 55, kHigh = 3, kAway = 1;
constexpr double kRoundingMm = 1e-5;

TagRoom boardRoom() {
    TagRoom room;
    room.bands = {{{-15, -kAway - kHigh, kBoardWidth + 30, kHigh}, true},
                  {{-15, kBoardHeight + kAway, kBoardWidth + 30, kHigh}, false}};
    return room;
}

/// A bench by chance: nets with a few holes each, some of them rails, cables in the bands, bodies in the way.
struct ByChance {
    std::mt19937 random;
    double upTo(double most) { return std::uniform_real_distribution<double>(0, most)(random); }
    int number(int most) { return std::uniform_int_distribution<int>(0, most - 1)(random); }

    TagFoot foot() {
        const Point at{3.76 + number(63) * kPitchMm, 4.6 + number(19) * kPitchMm};
        if (number(12) > 0) return {{at}, upTo(0.5)};
        return {{at, {at.x + number(9) * kPitchMm, 4.6 + number(19) * kPitchMm}}, 0};
    }
    TagWish wish() {
        TagWish wish{6 + upTo(8), number(4), {}};
        for (int i = 1 + number(10); i > 0; --i) wish.feet.push_back(foot());
        return wish;
    }
    TagRoom room() {
        TagRoom room = boardRoom();
        room.casingMm = 0.5 + upTo(0.8);
        for (int i = number(4); i > 0; --i) {
            const double from = upTo(kBoardWidth);
            room.bands[static_cast<std::size_t>(number(2))].taken.push_back({from, from + 1 + upTo(12)});
        }
        for (int i = number(30); i > 0; --i)
            room.hindrances.push_back({{upTo(kBoardWidth), upTo(kBoardHeight), 6, 3}, 0.3});
        return room;
    }
    std::vector<TagWish> wishes(int most) {
        std::vector<TagWish> wishes;
        for (int i = number(most); i > 0; --i) wishes.push_back(wish());
        return wishes;
    }
};

bool touch(const Rect& a, const Rect& b) {
    return a.left < b.right() - kRoundingMm && b.left < a.right() - kRoundingMm && a.top < b.bottom() - kRoundingMm &&
           b.top < a.bottom() - kRoundingMm;
}

/// From the tag to the far edge of the ring.
std::pair<double, double> spanOf(const TagRoom& room, const TagPlace& place, Point end) {
    if (room.bands[static_cast<std::size_t>(place.band)].above) return {place.frame.bottom(), end.y + room.ringMm};
    return {end.y - room.ringMm, place.frame.top};
}

void expectAlone(const TagRoom& room, const TagWish& wish, const TagPlace& place) {
    const TagBand& band = room.bands[static_cast<std::size_t>(place.band)];
    EXPECT_GE(place.frame.left, band.room.left - kRoundingMm);
    EXPECT_LE(place.frame.right(), band.room.right() + kRoundingMm);
    EXPECT_EQ(place.frame.top, band.room.top);
    EXPECT_EQ(place.frame.height, band.room.height);
    EXPECT_GE(place.frame.width, wish.width - kRoundingMm);
    for (const TakenStretch& taken : band.taken)
        EXPECT_FALSE(touch(place.frame, {taken.from, band.room.top, taken.to - taken.from, band.room.height}));
    EXPECT_TRUE(
        std::any_of(wish.feet.begin(), wish.feet.end(), [&](const TagFoot& foot) { return foot.ends == place.ends; }));
    // Its leaders are vertical where they leave it within its edges.
    for (const Point end : place.ends) {
        EXPECT_GE(end.x, place.frame.left + room.insetMm - kRoundingMm);
        EXPECT_LE(end.x, place.frame.right() - room.insetMm + kRoundingMm);
    }
}

void expectApart(const TagRoom& room, const TagPlace& one, const TagPlace& other) {
    EXPECT_FALSE(touch(one.frame, other.frame));
    for (const Point a : one.ends) {
        for (const Point b : other.ends) {
            const auto [top, bottom] = spanOf(room, one, a);
            const auto [otherTop, otherBottom] = spanOf(room, other, b);
            if (top >= otherBottom || otherTop >= bottom) continue;
            EXPECT_GE(std::abs(a.x - b.x), leaderClearance(room) - kRoundingMm)
                << "no leader through a ring or along another";
        }
    }
}

void expectLaws(const TagRoom& room, const std::vector<TagWish>& wishes,
                const std::vector<std::optional<TagPlace>>& places) {
    ASSERT_EQ(places.size(), wishes.size());
    for (std::size_t i = 0; i < places.size(); ++i) {
        if (!places[i]) continue;
        expectAlone(room, wishes[i], *places[i]);
        for (std::size_t j = 0; j < i; ++j)
            if (places[j]) expectApart(room, *places[i], *places[j]);
    }
}

TEST(TagPlaces, LawsHoldByChance) {
    ByChance chance{std::mt19937(11)};
    int placed = 0, asked = 0;
    for (int round = 0; round < 400; ++round) {
        SCOPED_TRACE(round);
        const TagRoom room = chance.room();
        const auto wishes = chance.wishes(60);
        const auto places = placeTags(room, wishes);
        expectLaws(room, wishes, places);
        asked += static_cast<int>(wishes.size());
        for (const auto& place : places) placed += place.has_value();
        if (testing::Test::HasFailure()) return;
    }
    EXPECT_GT(placed, asked / 2) << "most find a place";
}

TEST(TagPlaces, WhatStoodThereStaysWhileMoreComesAndGoes) {
    ByChance chance{std::mt19937(5)};
    for (int round = 0; round < 100; ++round) {
        SCOPED_TRACE(round);
        const TagRoom room = chance.room();
        auto wishes = chance.wishes(14);
        for (TagWish& wish : wishes) wish.rank = 1;
        const auto first = placeTags(room, wishes);
        for (std::size_t i = 0; i < wishes.size(); ++i) wishes[i].before = first[i];
        const auto again = placeTags(room, wishes);
        for (std::size_t i = 0; i < first.size(); ++i) {
            ASSERT_EQ(again[i].has_value(), first[i].has_value());
            if (!first[i]) continue;
            EXPECT_EQ(again[i]->ends, first[i]->ends) << "asked again";
            EXPECT_NEAR(again[i]->frame.left, first[i]->frame.left, kRoundingMm) << "asked again";
        }
        wishes.push_back(chance.wish());
        wishes.back().rank = 1;
        const auto more = placeTags(room, wishes);
        expectLaws(room, wishes, more);
        for (std::size_t i = 0; i < first.size(); ++i) {
            if (!first[i]) continue;
            ASSERT_TRUE(more[i]) << "who was there first doesn't give way";
            EXPECT_EQ(more[i]->ends, first[i]->ends);
        }
    }
}

TEST(TagPlaces, TheLowerRankGivesWay) {
    TagRoom room = boardRoom();
    room.bands.pop_back();
    const TagFoot foot{{{20, 13.53}}, 0};
    const auto places = placeTags(room, {{8, 2, {foot}}, {8, 0, {foot}}});
    EXPECT_FALSE(places[0]);
    EXPECT_TRUE(places[1]);
}

TEST(TagPlaces, TagsThatWouldTouchSlideSidewaysUntilTheirLeadersMeetThemJustInside) {
    TagRoom room = boardRoom();
    room.bands.pop_back();
    const auto places = placeTags(room, {{10, 1, {{{{20, 13}}, 0}}}, {10, 1, {{{{24, 13}}, 0}}}});
    ASSERT_TRUE(places[0] && places[1]);
    EXPECT_NEAR(places[0]->frame.right() + room.gapMm, places[1]->frame.left, kRoundingMm);
    EXPECT_NEAR(20 - places[0]->frame.left, places[1]->frame.right() - 24, kRoundingMm) << "both by as much";
    EXPECT_LE(20, places[0]->frame.right() - room.insetMm + kRoundingMm);
}

TEST(TagPlaces, AReadingBetweenTwoHolesSpansBoth) {
    const TagRoom room = boardRoom();
    const auto places = placeTags(room, {{8, 0, {{{{20, 13}, {40, 30}}, 0}}}});
    ASSERT_TRUE(places[0]);
    EXPECT_LT(places[0]->frame.left, 20);
    EXPECT_GT(places[0]->frame.right(), 40);
}

TEST(TagPlaces, AHundredNetsAreQuick) {
    ByChance chance{std::mt19937(3)};
    const TagRoom room = chance.room();
    std::vector<TagWish> wishes;
    for (int i = 0; i < 100; ++i) wishes.push_back(chance.wish());
    double least = 1e9;
    for (int i = 0; i < 5; ++i) {
        const auto begin = std::chrono::steady_clock::now();
        const auto places = placeTags(room, wishes);
        const std::chrono::duration<double, std::milli> took = std::chrono::steady_clock::now() - begin;
        least = std::min(least, took.count());
        ASSERT_EQ(places.size(), 100u);
    }
    EXPECT_LT(least, 5) << "ms; meant to be about one";
}

}  // namespace
}  // namespace tiepoint::ui
