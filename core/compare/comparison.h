#pragma once
// Two benches compared, as a teacher compares a learner's with her own: whether they are one circuit, whether they do the same, and else in
// what they differ, in words and with places on both.
//
// One circuit: the same parts, values within a tolerance, joined alike. Holes, jumpers and their colours, ids, the order inside a series chain and
// where switches and knobs stand don't count; neither do instruments and parts that no current can pass.
// The same behaviour: in every position of switches and knobs the lights look alike, and the readings pinned on the target read alike.
//
// Plain values; a Target is immutable once made and may be shared by threads. Stoppable (core/base/stopping.h).

#include "core/base/result.h"
#include "core/course/lesson.h"
#include "core/netlist/netlist.h"
#include "core/nets/layout.h"

#include <memory>
#include <string>
#include <vector>

namespace tiepoint {

struct ComparisonBounds {
    double tolerance = 0.05;       ///< values and pinned readings are alike within this share of the larger
    double brightness = 0.1;       ///< lights look alike within this, of 0..1, if both are lit or both dark
    double smallestVolt = 0.02;    ///< readings nearer than this are alike
    double smallestAmpere = 2e-5;  ///< likewise
    double smallestWatt = 1e-4;    ///< likewise
};

/// One thing that is otherwise.
struct BenchDifference {
    std::string text;                      ///< the whole truth, in one or two sentences
    std::string look;                      ///< where to look, without the solution
    std::vector<std::string> parts;        ///< ids of parts and jumpers of the bench
    std::vector<Hole> holes;               ///< of the bench
    std::vector<std::string> targetParts;  ///< the same on the target
    std::vector<Hole> targetHoles;
    friend bool operator==(const BenchDifference&, const BenchDifference&) = default;
};

struct Comparison {
    bool sameCircuit = false;
    bool sameBehaviour = false;
    bool allPositions = true;  ///< false: so many switches work together that not every combination was tried
    std::vector<BenchDifference>
        differences;  ///< of circuits and settings; empty for the same circuit with its supplies on alike
    std::vector<BenchDifference>
        behaviour;                    ///< what is seen or read to be otherwise, one position for each light or reading
    std::vector<std::string> limits;  ///< of an exercise that are passed, each in a sentence

    /// Whether the bench does what is asked for within what is allowed.
    bool isReached() const { return sameBehaviour && limits.empty(); }
};

/// What benches are compared with.
class ComparisonTarget {
public:
    /// A bench.
    explicit ComparisonTarget(std::shared_ptr<const Bench> bench);
    /// A circuit without places: differences have no places on the target.
    explicit ComparisonTarget(const Netlist& circuit);

    const Bench& bench() const { return *layout->bench; }

    std::shared_ptr<const Layout> layout;  ///< without instruments
    Netlist circuit;
    bool hasPlaces = true;
    LessonLimits limits;   ///< of an exercise; else none
    std::string exercise;  ///< its title; empty: no exercise
};

/// Compares a bench with a target. An error where the circuits are so alike in themselves that it can't be decided which part is which.
Result<Comparison> compareBenches(std::shared_ptr<const Bench> mine, const ComparisonTarget& target,
                                  const ComparisonBounds& bounds = {});

}  // namespace tiepoint
