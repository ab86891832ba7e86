// Shipped benches run in one piece, and again cut at random: in other frames, paused, edited there and back, saved and opened again with what
// the parts remember. The traces are the same.

#include "core/bench/bench_file.h"
#include "core/snapshot/runner.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace tiepoint {
namespace {

struct ChoppedCase {
    const char *name, *part;  ///< the bench, and the part whose first lead's potential is followed
    const char* held = nullptr;
    double fromSecond = 0, untilSecond = 0;  ///< of a press
    double seconds = 3;
};

std::shared_ptr<const Bench> openedBench(std::string_view text) {
    auto read = readBench(text);
    EXPECT_TRUE(read.ok());
    return std::make_shared<const Bench>(std::move(read).value().bench);
}

std::shared_ptr<const Bench> choppedBench(const ChoppedCase& each) {
    auto read = readBenchFile(std::string(TIEPOINT_SOURCE_DIR) + "/resources/benches/" + each.name + ".bench.json");
    EXPECT_TRUE(read.ok());
    return std::make_shared<const Bench>(std::move(read).value().bench);
}

class ChoppedRun {
public:
    ChoppedRun(const ChoppedCase& each, std::uint32_t seed) : each_(each), random_(seed), seed_(seed) {
        if (each.held) inputs_.presses = {{each.held, each.fromSecond, each.untilSecond}};
        runner_->setInputs(inputs_);
        bench_ = choppedBench(each);
        runner_->setBench(revision_, bench_);
    }

    std::vector<double> trace() {
        constexpr int kSamples = 60;
        std::vector<double> volts;
        double now = 0;
        for (int i = 1; i <= kSamples; ++i) {
            const double goal = each_.seconds * i / kSamples;
            while (seed_ != 0 && now < goal) {
                now = std::min(goal, now + std::uniform_real_distribution<double>(1e-4, 0.04)(random_));
                runner_->advanceTo(now);
                disturb(now);
            }
            runner_->advanceTo(goal);
            volts.push_back(volt());
        }
        return volts;
    }

private:
    double volt() {
        const auto snapshot = runner_->snapshot();
        EXPECT_EQ(snapshot->status(), Status::Solved) << snapshot->solution.reason;
        const Layout& layout = *snapshot->layout;
        const int part = bench_->partIndex(each_.part);
        return snapshot->solution.netVoltage[layout.netOfLead[layout.leadIndex(part, 0)]];
    }

    void disturb(double now) {
        switch (random_() % 6) {
            case 0:  // a pause: the same time again, and looked at
                runner_->advanceTo(now);
                runner_->snapshot();
                break;
            case 1: {  // another value, and back before time goes on
                Bench other = *bench_;
                for (Part& part : other.parts)
                    if (part.kind->name == "resistor") part.values[0] = 2 * part.value(0);
                runner_->setBench(++revision_, std::make_shared<const Bench>(other));
                runner_->setBench(++revision_, bench_);
                break;
            }
            case 2: {  // something else is on the bench from now on
                Bench other = *bench_;
                other.title += "'";
                bench_ = std::make_shared<const Bench>(other);
                runner_->setBench(++revision_, bench_);
                break;
            }
            case 3: {  // saved, opened elsewhere, and what the parts remember taken along
                const State kept = runner_->state();
                bench_ = openedBench(writeBench(*bench_));
                auto fresh = makeRunner();
                fresh->setInputs(inputs_);
                fresh->advanceTo(now);
                fresh->setBench(++revision_, bench_);
                fresh->setState(kept);
                runner_ = std::move(fresh);
                break;
            }
            default:
                break;
        }
    }

    ChoppedCase each_;
    std::mt19937 random_;
    std::uint32_t seed_;
    Inputs inputs_;
    std::uint64_t revision_ = 1;
    std::shared_ptr<const Bench> bench_;
    std::unique_ptr<Runner> runner_ = makeRunner();
};

class Chopped : public testing::TestWithParam<ChoppedCase> {};

TEST_P(Chopped, GivesTheSameTrace) {
    const auto whole = ChoppedRun(GetParam(), 0).trace();
    double swing = 0;
    for (const double volt : whole) swing = std::max(swing, std::abs(volt - whole[0]));
    EXPECT_GT(swing, 0.1) << "nothing happens in it";
    for (const std::uint32_t seed : {11U, 12U, 13U}) {
        const auto pieces = ChoppedRun(GetParam(), seed).trace();
        for (std::size_t i = 0; i < whole.size(); ++i)
            EXPECT_NEAR(pieces[i], whole[i], 2e-3 * std::max(1.0, swing)) << seed << " " << i;
    }
}

INSTANTIATE_TEST_SUITE_P(Benches, Chopped,
                         testing::Values(ChoppedCase{"flashing-beacon", "C1", nullptr, 0, 0, 3},
                                         ChoppedCase{"fog-signal", "C1", nullptr, 0, 0, 0.5},
                                         ChoppedCase{"ballast-tank", "C1", "S1", 0.2, 1.7, 4},
                                         ChoppedCase{"stair-lamp", "C1", "S1", 0.2, 0.6, 6},
                                         ChoppedCase{"harbour-fan", "D1", "S1", 0.1, 1.0, 1.5}),
                         [](const auto& each) {
                             std::string name = each.param.name;
                             std::erase(name, '-');
                             return name;
                         });

}  // namespace
}  // namespace tiepoint
