#pragma once
// The readings that are pinned on a target, looked up at the places of a bench that do the same work. Pure.

#include "core/compare/same_behaviour.h"
#include "core/snapshot/snapshot.h"

#include <optional>

namespace tiepoint {

struct ReadingApart {
    const PinnedReading* reading;
    std::string text;  ///< "volts at e12 of the target: 6.19 V there, 7.42 V here."
};

/// Borrows all that it is made of.
class ReadingsThere {
public:
    ReadingsThere(const ComparedSide& mine, const ComparedSide& target, const KnownPartners& partners,
                  const ComparisonBounds& bounds)
        : mine_(mine),
          target_(target),
          partners_(partners),
          bounds_(bounds) {}

    /// Those that read otherwise, both benches being in one position. None where either has no solution.
    std::vector<ReadingApart> apartIn(const Snapshot& there, const Snapshot& here) const;

private:
    bool likeReadings(double a, double b, std::string_view unit) const;
    std::optional<int> netOnBench(int targetNet) const;
    std::optional<double> voltAt(const Hole& hole, const Snapshot& here) const;
    double referenceVolt(const Snapshot& there, const Snapshot& here) const;
    std::optional<double> readOnBench(const Measurand& of, const Snapshot& there, const Snapshot& here) const;
    int partnerOf(int targetPart) const;
    std::optional<double> amperesOnBench(const AmperesIn& in, const Snapshot& here) const;

    const ComparedSide& mine_;
    const ComparedSide& target_;
    const KnownPartners& partners_;
    const ComparisonBounds& bounds_;
};

}  // namespace tiepoint
