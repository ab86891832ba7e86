// What holds for every circuit, tried on random ones that are laid out on boards: Kirchhoff's current law at every net and in
// every piece of metal, the power balance, and the same answer wherever the parts lie and however the file lists them.

#include "core/bench/validate.h"
#include "core/snapshot/snapshot.h"
#include "support/lay_out.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

namespace tiepoint {
namespace {

constexpr double kDefectAmpere = 1e-12;
constexpr double kDefectWatt = 1e-11;

std::vector<test::Piece2> randomPieces(std::mt19937& random) {
    const auto pick = [&](int count) { return static_cast<int>(random() % static_cast<unsigned>(count)); };
    std::uniform_real_distribution<double> exponent(1, 5);
    const int nodes = 3 + pick(8);
    const auto node = [&] { return fmt::format("n{}", pick(nodes)); };
    std::vector<test::Piece2> pieces;
    pieces.push_back(
        {"PS1", "bench-supply", "n0", "n1", {{"voltage", 1 + pick(12)}, {"currentLimit", pick(2) ? 0.5 : 0.02}}});
    if (pick(3) == 0) pieces.push_back({"PS2", "bench-supply", node(), node(), {{"voltage", 1 + pick(12)}}});
    const int parts = nodes + pick(2 * nodes);
    for (int k = 1; k <= parts; ++k) {
        if (pick(3))
            pieces.push_back(
                {fmt::format("R{}", k), "resistor", node(), node(), {{"resistance", std::pow(10, exponent(random))}}});
        else
            pieces.push_back({fmt::format("D{}", k), "led", node(), node(), {{"colour", pick(8)}}});
    }
    return pieces;
}

/// The numbers of one part, found by id.
struct PartNumbers {
    double volt[2], ampere[2], watt, brightness;
};

std::vector<PartNumbers> numbersOf(const Snapshot& s, const std::vector<test::Piece2>& pieces) {
    std::vector<PartNumbers> numbers;
    for (const test::Piece2& piece : pieces) {
        const int part = s.layout->bench->partIndex(piece.id);
        const int lead = s.layout->leadIndex(part, 0);
        numbers.push_back({{s.leadVoltage(lead), s.leadVoltage(lead + 1)},
                           {s.leadCurrent[lead], s.leadCurrent[lead + 1]},
                           s.partPower[part],
                           s.brightness(part)});
    }
    return numbers;
}

bool same(double a, double b, double relative) {
    if (std::isnan(a) || std::isnan(b)) return std::isnan(a) && std::isnan(b);
    return std::abs(a - b) <= relative * std::max(std::abs(a), std::abs(b));
}

std::shared_ptr<const Snapshot> solve(const std::vector<test::Piece2>& pieces, const test::LayOutOptions& options) {
    const auto bench = std::make_shared<const Bench>(test::layOut(pieces, options));
    EXPECT_TRUE(validate(*bench).ok());
    return evaluate(bench);
}

void checkNets(const Snapshot& s) {
    std::vector<double> sum(s.layout->netCount, 0.0);
    for (int lead = 0; lead < s.layout->leadCount(); ++lead) sum[s.layout->netOfLead[lead]] += s.leadCurrent[lead];
    for (double defect : sum) EXPECT_LE(std::abs(defect), kDefectAmpere);
    double watt = 0;
    for (double power : s.partPower) watt += power;
    EXPECT_LE(std::abs(watt), kDefectWatt);
    EXPECT_LE(s.solution.kirchhoffWorst, kDefectAmpere);
    EXPECT_LE(std::abs(s.solution.powerBalance), kDefectWatt);
}

void checkMetal(const Snapshot& s) {
    std::vector<double> sum(s.layout->joints.size(), 0.0);
    for (std::size_t p = 0; p < s.layout->pieces.size(); ++p) {
        sum[s.layout->pieces[p].from] += s.pieceCurrent[p];
        sum[s.layout->pieces[p].to] -= s.pieceCurrent[p];
    }
    for (int lead = 0; lead < s.layout->leadCount(); ++lead) sum[s.layout->jointOfLead[lead]] += s.leadCurrent[lead];
    for (double defect : sum) EXPECT_LE(std::abs(defect), kDefectAmpere);
}

TEST(Invariants, HoldOnRandomCircuits) {
    std::mt19937 random(20);
    const test::LayOutOptions variants[] = {{0, false, true}, {3, false, false}, {0, true, false}, {2, true, true}};
    int solved = 0;
    for (int round = 0; round < 300; ++round) {
        SCOPED_TRACE(round);
        const std::vector<test::Piece2> pieces = randomPieces(random);
        const auto base = solve(pieces, {});
        ASSERT_EQ(base->status(), Status::Solved) << base->solution.reason;
        ++solved;
        checkNets(*base);
        checkMetal(*base);
        const auto expected = numbersOf(*base, pieces);
        for (const test::LayOutOptions& variant : variants) {
            const auto other = numbersOf(*solve(pieces, variant), pieces);
            for (std::size_t k = 0; k < pieces.size(); ++k) {
                // The circuit is compiled in the order of ids, so not a digit may differ.
                for (int lead : {0, 1}) {
                    EXPECT_TRUE(same(other[k].volt[lead], expected[k].volt[lead], 0)) << pieces[k].id;
                    EXPECT_TRUE(same(other[k].ampere[lead], expected[k].ampere[lead], 0)) << pieces[k].id;
                }
                EXPECT_TRUE(same(other[k].watt, expected[k].watt, 0)) << pieces[k].id;
                EXPECT_TRUE(same(other[k].brightness, expected[k].brightness, 0)) << pieces[k].id;
            }
        }
    }
    EXPECT_EQ(solved, 300);
}

}  // namespace
}  // namespace tiepoint
