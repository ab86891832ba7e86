#pragma once
// The loop that the current of a part takes, as it was solved: from a supply (or the test source of an instrument) through one part after
// the other and back to it, through no net twice. Where the current divides the loop follows the largest share. Everyone who tells a loop (the potential walk, answers, cards, the resistor
// helper) tells this one. Pure functions of a snapshot; safe from any thread.

#include "core/snapshot/snapshot.h"

#include <map>
#include <optional>
#include <utility>
#include <vector>

namespace tiepoint {

/// What every part takes out of every net and gives into it. A voltmeter's own current is no part of the circuit that it looks at.
class Traffic {
public:
    /// `asked` is a part that counts whatever it is; -1 for none.
    explicit Traffic(const Snapshot& snapshot, int asked = -1);

    /// Less than this is leakage beside what is followed; A.
    double least() const { return least_; }
    /// Into the part out of the net, and out of the part into the net; 0 if too little to follow.
    double into(int part, int net) const;
    double outOf(int part, int net) const;
    bool carries(int part) const { return !byPart_[part].empty(); }

    /// All that leaves a net, and the most that leaves it into one part.
    double whole(int net) const;
    double most(int net) const;
    /// All that a part gives, and the most that it gives into one net.
    double given(int part) const;
    double mostGiven(int part) const;

    /// A part, and the net that was crossed to reach it.
    struct Hop {
        int part = 0;
        int net = 0;
    };
    /// Where the current of a part goes on, the largest share first.
    std::vector<Hop> after(int part) const;

private:
    struct Share {
        double in = 0, out = 0;
    };
    double least_;
    std::vector<std::map<int, Share>> byPart_;
    std::vector<std::vector<int>> byNet_;  ///< parts
};

/// A part of a loop: where its current enters and where it leaves.
struct LoopPart {
    int part = 0;
    int fromNet = 0, toNet = 0;
    double ampere = 0;  ///< that goes this way through the part
};

struct SolvedLoop {
    std::vector<LoopPart> parts;  ///< in the direction of the current; the first is a source
    int source() const { return parts.front().part; }
};

/// The loop through a part, which may be a supply; nothing where it carries no current or nothing drives it.
std::optional<SolvedLoop> loopThrough(const Snapshot& snapshot, const Traffic& traffic, int part);
std::optional<SolvedLoop> loopThrough(const Snapshot& snapshot, int part);

/// Whether anywhere on the loop only a share of the current goes on.
bool divides(const Traffic& traffic, const SolvedLoop& loop);

}  // namespace tiepoint
