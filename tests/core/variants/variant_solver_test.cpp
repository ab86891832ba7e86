// Variants solved by ports against the whole bench evaluated: thousands of slips on random benches, and cases where a port could go wrong.

#include "core/variants/variant_solver.h"

#include "core/snapshot/snapshot.h"
#include "support/slip_benches.h"

#include <gtest/gtest.h>

#include <cmath>

namespace tiepoint {
namespace {

constexpr double kVariantShare = 1e-6;        ///< of the largest current
constexpr double kVariantLeakAmpere = 3e-11;  ///< where nothing flows: the solver's own leaks

/// A variant as a bench that anybody can evaluate: what is open isn't plugged in, what is dry has a resistor before its first lead, on a
/// board of its own.
std::shared_ptr<const Bench> plainBench(const Bench& base, const Variant& variant) {
    Bench bench = *benchOf(base, variant);
    for (const int part : variant.open) bench.parts[part] = makePart(*bench.parts[part].kind, bench.parts[part].id);
    if (!variant.dry.empty())
        bench.boards.push_back({"Dry", findBoardKind("mini"), 200, 0, Rails::Through, Labels::ATop, {}});
    int column = 0;
    for (const auto& [index, ohm] : variant.dry) {
        Part series = makePart(*findKind("resistor"), fmt::format("Dry{}", index));
        series.values[0] = ohm;
        ++column;
        series.leads = {bench.parts[index].leads[0], Hole{"Dry", Line::A, column}};
        bench.parts[index].leads[0] = Hole{"Dry", Line::B, column};
        bench.parts.push_back(series);
    }
    return std::make_shared<const Bench>(std::move(bench));
}

struct Tally {
    int variants = 0, reduced = 0;
    std::map<std::string, std::pair<int, int>> bySlip;
};

/// Every current, and the voltage across every part, as the whole bench has them.
void compareSolvers(VariantSolver& solver, const Bench& base, const Variant& variant, Status status) {
    const auto whole = evaluate(plainBench(base, variant));
    double largest = 0;
    for (const ElementState& e : whole->solution.elements()) largest = std::max(largest, std::abs(e.currentAmpere));
    // A supply that isn't there, or has failed, hangs in the plain bench and is on.
    const bool isOff = status == Status::Off && whole->status() == Status::Solved && largest == 0;
    ASSERT_TRUE(isOff || status == whole->status()) << whole->solution.reason;
    if (status == Status::None) return;
    for (const ElementState& e : whole->solution.elements()) {
        if (e.part >= static_cast<int>(base.parts.size())) continue;
        const double ampere = solver.ampere(e.part, e.spec);
        ASSERT_NEAR(ampere, e.currentAmpere, kVariantShare * largest + kVariantLeakAmpere)
            << base.parts[e.part].id << ", largest " << largest << (solver.wasReduced() ? ", by ports" : ", in full");
    }
    for (std::size_t part = 0; part < base.parts.size(); ++part) {
        const bool isPlain =
            std::ranges::find(variant.dry, static_cast<int>(part), &Variant::Dry::part) == variant.dry.end() &&
            std::ranges::find(variant.open, static_cast<int>(part)) == variant.open.end();
        if (!isPlain) continue;
        const int lead = whole->layout->leadIndex(static_cast<int>(part), 0);
        if (std::abs(whole->leadCurrent[lead]) < 1e-10) continue;  // what leaks alone hold isn't promised
        const double expected = whole->leadVoltage(lead) - whole->leadVoltage(lead + 1);
        const double volt = solver.volt(static_cast<int>(part), 0) - solver.volt(static_cast<int>(part), 1);
        if (std::isfinite(expected) && std::isfinite(volt)) {
            ASSERT_NEAR(volt, expected, 5e-4) << base.parts[part].id;
        }
    }
}

int pickOf(std::mt19937& random, int count) { return static_cast<int>(random() % static_cast<unsigned>(count)); }

void compareMany(int benches, int parts, int slips, unsigned seed, Tally& tally) {
    std::mt19937 random(seed);
    for (int b = 0; b < benches; ++b) {
        test::SlipBench drawn(parts / 2 + pickOf(random, parts), 1 + pickOf(random, 3), random);
        VariantSolver solver(buildLayout(drawn.share()));
        for (int k = 0; k < slips; ++k) {
            const Variant variant = drawn.slip();
            const Status status = solver.solve(variant);
            ++tally.variants;
            tally.reduced += solver.wasReduced();
            auto& [all, short_] = tally.bySlip[drawn.said()];
            ++all;
            short_ += solver.wasReduced();
            compareSolvers(solver, drawn.bench(), variant, status);
            if (testing::Test::HasFatalFailure()) {
                ADD_FAILURE() << "bench " << b << ", variant " << k << ": " << drawn.said();
                return;
            }
        }
    }
}

TEST(VariantSolver, AgreesWithTheWholeBenchOnThousandsOfSlips) {
    Tally tally;
    compareMany(60, 24, 60, 1992, tally);
    compareMany(6, 150, 100, 1987, tally);
    EXPECT_GT(tally.reduced, tally.variants * 9 / 10);
    for (const auto& [slip, counts] : tally.bySlip) {
        EXPECT_GT(counts.first, 100) << slip;
        EXPECT_GT(counts.second, counts.first / 2) << slip;
    }
}

}  // namespace
}  // namespace tiepoint
