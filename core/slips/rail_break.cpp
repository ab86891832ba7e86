// Whether it matters that a rail is broken in the middle: leads hang on both halves, and nothing else joins them.

#include "core/slips/circuit_digest.h"

namespace tiepoint {
namespace {

constexpr std::size_t kMostWalked = 256;  ///< strips of one half's net; beyond them the halves count as apart

}  // namespace

/// What hangs on one half of a rail, walked without going through the other.
class CircuitDigest::HalfOfRail {
public:
    HalfOfRail(const CircuitDigest& circuit, Vertex rail, int lastOfLeft)
        : circuit_(circuit),
          rail_(rail),
          lastOfLeft_(lastOfLeft) {}

    struct Found {
        bool leads = false, otherHalf = false;
    };
    Found walk(bool left) const {
        Found found;
        std::vector<Vertex> open;
        std::unordered_map<Vertex, bool> seen;
        const auto goOn = [&](Vertex from) {
            for (const Arc& arc : circuit_.arcs_[from]) {
                if (from == rail_ && numberAt(arc.join, left) < 0) continue;
                if (arc.to == rail_)
                    found.otherHalf = found.otherHalf || numberAt(arc.join, !left) >= 0;
                else if (seen.emplace(arc.to, true).second)
                    open.push_back(arc.to);
            }
        };
        goOn(rail_);
        while (!open.empty() && seen.size() < kMostWalked) {
            const Vertex at = open.back();
            open.pop_back();
            found.leads = found.leads || circuit_.own_[at] != 0;
            goOn(at);
        }
        return found;
    }

private:
    /// The number of the rail hole of that half in which a jumper ends; -1 if it ends in none.
    int numberAt(int join, bool left) const {
        const auto& jumpers = circuit_.layout_.bench->jumpers;
        if (join >= static_cast<int>(jumpers.size())) return -1;
        for (const JumperEnd& end : jumpers[join].ends) {
            const Hole* hole = std::get_if<Hole>(&end);
            const bool here = hole != nullptr && circuit_.vertexOfHole(*hole) == rail_;
            if (here && (hole->number <= lastOfLeft_) == left) return hole->number;
        }
        return -1;
    }

    const CircuitDigest& circuit_;
    Vertex rail_;
    int lastOfLeft_;
};

bool CircuitDigest::breakMatters(int board, Line rail) const {
    const Board& on = layout_.bench->boards[board];
    const int half = on.kind->railHoles / 2;
    bool left = false, right = false;
    for (int number = 1; number <= on.kind->railHoles; ++number) {
        const int joint = layout_.jointOfHole[layout_.boardFirstHole[board] + on.kind->holeIndex(rail, number)];
        if (joint >= 0 && layout_.joints[joint].lead >= 0) (number <= half ? left : right) = true;
    }
    const HalfOfRail halves(*this, vertexOfHole({on.id, rail, 1}), half);
    const auto ofLeft = halves.walk(true), ofRight = halves.walk(false);
    return (left || ofLeft.leads) && (right || ofRight.leads) && !ofLeft.otherHalf && !ofRight.otherHalf;
}

}  // namespace tiepoint
