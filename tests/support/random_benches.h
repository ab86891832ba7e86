#pragma once
// Benches put together at random by the laws of placing: parts of many kinds wherever they go, some of their legs in the same columns, and
// jumpers between strips in use and rails. What they do isn't known; what can be built of them is. The same seed gives the same bench.

#include "core/edit/placement.h"
#include "support/build_bench.h"

#include <fmt/format.h>

#include <random>
#include <vector>

namespace tiepoint::test {

class RandomPlacing {
public:
    explicit RandomPlacing(unsigned seed) : random_(seed) {}

    Bench make(int parts) {
        static constexpr const char* kBoards[] = {"half", "half", "full", "mini"};
        bench_ =
            BenchBuilder().board("A", kBoards[pick(4)], 0, 0, pick(4) == 0 ? Rails::Split : Rails::Through).build();
        for (int number = 1; number <= parts; ++number) addPart(number);
        for (int jumper = 1, most = parts + pick(parts); jumper <= most; ++jumper) addJumper();
        return bench_;
    }

private:
    int pick(int count) { return static_cast<int>(random_() % static_cast<unsigned>(count)); }

    Hole anyHole() {
        const BoardKind& kind = *bench_.boards[0].kind;
        const bool rail = kind.hasRails() && pick(4) == 0;
        const Line line = static_cast<Line>(rail ? kRowCount + pick(kRailCount) : pick(kRowCount));
        return {"A", line, 1 + pick(kind.holesOf(line))};
    }
    /// A hole of a strip that something is in, often; else any.
    Hole likelyHole() {
        std::vector<Hole> used;
        for (const Part& part : bench_.parts) {
            for (const auto& lead : part.leads) {
                if (lead) used.push_back(*lead);
            }
        }
        if (used.empty() || pick(5) == 0) return anyHole();
        return nearestFreeInStrip(bench_, used[static_cast<std::size_t>(pick(static_cast<int>(used.size())))])
            .value_or(anyHole());
    }

    void addPart(int number) {
        static constexpr const char* kKinds[] = {"resistor",    "resistor",     "led",           "led",  "diode",
                                                 "push-button", "slide-switch", "potentiometer", "lamp", "toggle",
                                                 "cells",       "bench-supply", "multimeter"};
        const PartKind& kind = *findKind(kKinds[pick(13)]);
        constexpr int kTries = 40;
        for (int i = 0; i < kTries; ++i) {
            Part part = makePart(kind, fmt::format("{}{}", kind.prefix, number));
            part = placedAt(bench_, part, likelyHole(), pick(4));
            if (kind.package->reach == Reach::Flying) part.leads[1] = anyHole();
            if (refusal(bench_, part)) continue;
            setAtRandom(part);
            bench_.parts.push_back(std::move(part));
            return;
        }
    }

    void setAtRandom(Part& part) {
        static constexpr double kOhms[] = {100, 150, 220, 330, 470, 560, 1000, 2200, 4700, 10000, 27000};
        const int ohm = resistanceValue(*part.kind);
        if (ohm >= 0) part.values[static_cast<std::size_t>(ohm)] = kOhms[pick(11)];
        for (std::size_t i = 0; i < part.values.size(); ++i) {
            const auto& choices = part.kind->values[i].choices;
            if (!choices.empty()) part.values[i] = pick(static_cast<int>(choices.size()));
        }
    }

    void addJumper() {
        constexpr int kTries = 20;
        for (int i = 0; i < kTries; ++i) {
            Jumper jumper;
            jumper.id = freeId(bench_, "W");
            jumper.ends = {likelyHole(), pick(2) == 0 ? likelyHole() : anyHole()};
            if (refusal(bench_, jumper)) continue;
            bench_.jumpers.push_back(std::move(jumper));
            return;
        }
    }

    std::mt19937 random_;
    Bench bench_;
};

inline Bench placedAtRandom(unsigned seed, int parts) { return RandomPlacing(seed).make(parts); }

}  // namespace tiepoint::test
