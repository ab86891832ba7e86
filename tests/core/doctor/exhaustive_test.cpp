// The doctor against an exhaustive solver that shares no code with it: metal is found by walking over holes, resistors and supplies are put
// into a dense matrix, and every suspect is judged by what it would show. Small circuits of resistors and buttons, for which that is exact.

#include "core/doctor/doctor.h"
#include "core/doctor/observation_words.h"
#include "examiner/chance.h"
#include "support/build_bench.h"

#include <Eigen/Dense>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>

namespace tiepoint::test {
namespace {

/// Volts anywhere on a bench of bench supplies, resistors and push buttons.
class DenseBench {
public:
    DenseBench(const Bench& bench, const std::vector<std::string>& held) : bench_(bench), held_(held) {}

    /// A meter of ten megohms from the strip of a hole to the first supply's minus.
    double volts(const Hole& red) {
        group_.clear(), number_.clear();
        for (const Jumper& jumper : bench_.jumpers) {
            if (jumper.condition != Condition::Sound) continue;
            join(place(std::get<Hole>(jumper.ends[0])), place(std::get<Hole>(jumper.ends[1])));
        }
        struct Branch {
            int a, b;
            double siemens, ampere;  // Norton: `ampere` driven from b to a
        };
        std::vector<Branch> branches;
        int minus = -1;
        for (const Part& part : bench_.parts) {
            const auto at = [&](int lead) { return tip(part, lead); };
            const bool broken = part.condition == Condition::Dead || part.condition == Condition::OpenInside;
            if (part.kind->name == "bench-supply") {
                if (minus < 0) minus = at(1);
                const double ohm = part.value(part.kind->valueIndex("seriesResistance"));
                const double emf = part.value(part.kind->valueIndex("voltage"));
                if (part.stateValue(part.kind->stateIndex("on")) != 0 && !broken)
                    branches.push_back({at(0), at(1), 1 / ohm, emf / ohm});
            } else if (part.kind->name == "resistor") {
                if (!broken) branches.push_back({at(0), at(1), 1 / part.value(part.kind->valueIndex("resistance")), 0});
            } else {
                join(at(0), at(1)), join(at(2), at(3));
                const double ohm = part.value(part.kind->valueIndex("contactResistance"));
                if (!broken && std::ranges::find(held_, part.id) != held_.end())
                    branches.push_back({at(0), at(2), 1 / ohm, 0});
            }
        }
        const int tipAt = place(red);
        branches.push_back({tipAt, minus, 1e-7, 0});
        const auto count = static_cast<Eigen::Index>(group_.size());
        Eigen::MatrixXd matrix = 1e-13 * Eigen::MatrixXd::Identity(count, count);
        Eigen::VectorXd right = Eigen::VectorXd::Zero(count);
        for (const Branch& each : branches) {
            const int a = root(each.a), b = root(each.b);
            matrix(a, a) += each.siemens, matrix(b, b) += each.siemens;
            matrix(a, b) -= each.siemens, matrix(b, a) -= each.siemens;
            right(a) += each.ampere, right(b) -= each.ampere;
        }
        const int ground = root(minus);
        matrix.row(ground).setZero();
        matrix(ground, ground) = 1;
        right(ground) = 0;
        const Eigen::VectorXd volt = matrix.partialPivLu().solve(right);
        for (const Branch& each : branches) {
            const double ampere = each.ampere - each.siemens * (volt(root(each.a)) - volt(root(each.b)));
            isLimited_ = isLimited_ || (each.ampere > 0 && ampere > kLimitAmpere);
        }
        return volt(root(tipAt)) - volt(ground);
    }
    /// Whether a supply would give more than it can: there the oracle's straight lines end.
    bool isLimited() const { return isLimited_; }

private:
    static constexpr double kLimitAmpere = 0.5;
    using Strip = std::tuple<std::string, int, int>;

    int node(const Strip& strip) {
        const auto [found, isNew] = number_.try_emplace(strip, static_cast<int>(group_.size()));
        if (isNew) group_.push_back(found->second);
        return found->second;
    }
    int place(const Hole& hole) {
        if (hole.line >= Line::TopPlus) {
            const Board& board = *bench_.findBoard(hole.board);
            const bool second = board.rails == Rails::Split && hole.number > board.kind->railHoles / 2;
            return node({hole.board, static_cast<int>(hole.line), second ? -2 : -1});
        }
        return node({hole.board, hole.line <= Line::E ? 100 : 101, hole.number});
    }
    int tip(const Part& part, int lead) {
        const auto first = std::ranges::find_if(part.leads, [](const auto& hole) { return hole.has_value(); });
        const bool dry =
            part.condition == Condition::DryContact && &part.leads[static_cast<std::size_t>(lead)] == &*first;
        const auto& hole = part.leads[static_cast<std::size_t>(lead)];
        return hole && !dry ? place(*hole) : node({part.id, -10, lead});
    }
    int root(int node) const {
        while (group_[static_cast<std::size_t>(node)] != node) node = group_[static_cast<std::size_t>(node)];
        return node;
    }
    void join(int a, int b) {
        const int from = root(a), to = root(b);
        group_[static_cast<std::size_t>(from)] = to;
    }

    const Bench& bench_;
    std::vector<std::string> held_;
    std::map<Strip, int> number_;
    std::vector<int> group_;
    bool isLimited_ = false;
};

/// Two resistors and a button in a row, drawn somewhere on a half board; printed exactly, so that no tolerance blurs the comparison.
Bench drawCircuit(examiner::Chance& chance) {
    const int first = chance.within(2, 6), second = first + chance.within(4, 6), third = second + 2,
              last = third + chance.within(4, 6);
    const auto hole = [](char row, int column) { return "A." + std::string(1, row) + std::to_string(column); };
    const std::vector<double> ohms{220, 470, 1000, 4700};
    BenchBuilder builder;
    const std::string a = hole('c', first), b = hole('c', second), e1 = hole('e', second), f1 = hole('f', second),
                      e2 = hole('e', third), f2 = hole('f', third), g = hole('h', third), h = hole('h', last),
                      start = hole('a', first), end = hole('j', last);
    builder.board("A", "half")
        .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}}, {{"voltage", chance.within(4, 12)}})
        .part("R1", "resistor", {{"1", a}, {"2", b}}, {{"resistance", chance.oneOf(ohms)}, {"tolerance", 1e-4}})
        .part("S1", "push-button", {{"1a", e1}, {"1b", f1}, {"2a", e2}, {"2b", f2}})
        .part("R2", "resistor", {{"1", g}, {"2", h}}, {{"resistance", chance.oneOf(ohms)}, {"tolerance", 1e-4}})
        .jumper("A.top+5", start)
        .jumper(end, "A.bottom-20");
    return builder.build();
}

bool isLinear(const Suspect& suspect, const Doctor& doctor) {
    // Limits of supplies bend the line; the oracle knows none.
    for (const auto& [of, value] : suspect.settings)
        if (of.part == "PS1" && !of.state &&
            doctor.plan().findPart("PS1")->kind->values[static_cast<std::size_t>(of.index)].name == "currentLimit")
            return false;
    return true;
}

TEST(DoctorExhaustive, AgreesWithADenseSolverOnSmallCircuits) {
    examiner::Chance chance(2718);
    int judged = 0, kept = 0, ruledOut = 0;
    for (int round = 0; round < 12; ++round) {
        const Bench plan = drawCircuit(chance);
        Doctor doctor(buildLayout(std::make_shared<const Bench>(plan)));
        const auto& suspects = doctor.suspects().all();
        const Suspect& truth = suspects[static_cast<std::size_t>(chance.below(static_cast<int>(suspects.size())))];
        const Bench real = doctor.suspects().built(truth);
        std::vector<Observation> seen;
        bool limited = false;
        const auto& tips = doctor.suspects().ground().tips();
        for (const bool pressed : {true, false}) {
            const std::vector<std::string> held = pressed ? std::vector<std::string>{"S1"} : std::vector<std::string>{};
            const Digits digits = *readHolds(plan, held);
            const Hole red = doctor.suspects().ground().holeAt(chance.oneOf(tips).hole);
            DenseBench oracle(real, held);
            seen.push_back({digits, SawVolts{red, oracle.volts(red)}, {}});
            limited = limited || oracle.isLimited();
        }
        if (limited) continue;
        const Diagnosis diagnosis = doctor.diagnose(seen);
        for (const Suspect& suspect : suspects) {
            if (!isLinear(suspect, doctor) || !isLinear(truth, doctor)) continue;
            const Bench built = doctor.suspects().built(suspect);
            bool within = true, clear = true;
            for (const Observation& each : seen) {
                const auto& volts = std::get<SawVolts>(each.what);
                DenseBench oracle(built, holdsOf(plan, each.digits));
                const double expected = oracle.volts(volts.red);
                clear = clear && !oracle.isLimited();
                const double allowed = 0.03 * std::max(std::abs(expected), std::abs(volts.volt)) + 0.05;
                const double off = std::abs(expected - volts.volt);
                within = within && off <= allowed;
                clear = clear && (off < 0.9 * allowed || off > 1.2 * allowed);
            }
            if (!clear) continue;
            const bool fits = std::ranges::find(diagnosis.fits, &suspect, &Weighed::suspect) != diagnosis.fits.end();
            if (diagnosis.pairs || diagnosis.contradiction) {
                EXPECT_FALSE(within) << doctor.slipsInWords(suspect);
                continue;
            }
            EXPECT_EQ(fits, within) << "round " << round << ": " << doctor.slipsInWords(suspect) << " while truly "
                                    << doctor.slipsInWords(truth) << "; " << observationInWords(plan, seen[0]) << ", "
                                    << observationInWords(plan, seen[1]);
            ++judged;
            (fits ? kept : ruledOut) += 1;
        }
    }
    EXPECT_GT(judged, 500);
    EXPECT_GT(kept, 20);
    EXPECT_GT(ruledOut, 200);
}

}  // namespace
}  // namespace tiepoint::test
