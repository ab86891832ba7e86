#pragma once
// The ground on which slips are looked for: one bench with what is asked of it again and again. Which thing is in which hole, what lies
// near, what the circuit is, and whether hands can build a change. Made in n log n; each question then costs what lies near, not what
// the bench holds.
//
// A change is judged by the laws of placing (core/edit/placement.h) on a small bench of what lies about it, so that the answer is that of
// the whole bench but for metal that only far jumpers join: there it is stricter.
// Keeps the layout alive. Not thread-safe: it counts its work. One for each thread.

#include "core/nets/layout.h"
#include "core/slips/bench_change.h"
#include "core/slips/circuit_digest.h"
#include "core/slips/things_near.h"

#include <array>
#include <memory>
#include <optional>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace tiepoint {

/// A lead of a part or an end of a jumper that is in a hole.
struct Tip {
    bool jumper = false;
    int thing = -1;  ///< index of the part or jumper
    int lead = 0;    ///< or end
    int hole = -1;   ///< index in the layout
    int strip = -1;
    bool alone = false;  ///< a hand can move it by itself: no leg of a rigid part
};

class Ground {
public:
    explicit Ground(std::shared_ptr<const Layout> layout);

    const Layout& layout() const { return *layout_; }
    const Bench& bench() const { return *layout_->bench; }
    const CircuitDigest& circuit() const { return circuit_; }
    const Part& part(int index) const { return bench().parts[static_cast<std::size_t>(index)]; }
    const Jumper& jumper(int index) const { return bench().jumpers[static_cast<std::size_t>(index)]; }
    const std::string& idOf(const Tip& tip) const { return tip.jumper ? jumper(tip.thing).id : part(tip.thing).id; }

    const std::vector<Tip>& tips() const { return tips_; }
    /// The tips of one part or jumper; indices into tips().
    const std::vector<int>& tipsOfPart(int part) const { return tipsOfPart_[static_cast<std::size_t>(part)]; }
    const std::vector<int>& tipsOfJumper(int jumper) const { return tipsOfJumper_[static_cast<std::size_t>(jumper)]; }
    /// The tips in a strip; indices into tips().
    const std::vector<int>& tipsIn(int strip) const { return tipsIn_[static_cast<std::size_t>(strip)]; }

    /// Dense number of a hole, or -1; in constant time.
    int holeIndex(const Hole& hole) const;
    Hole holeAt(int index) const { return layout_->holeAt(index); }
    int stripOf(int hole) const { return layout_->stripOfHole[static_cast<std::size_t>(hole)]; }
    int netOfStrip(int strip) const { return layout_->netOfStrip[static_cast<std::size_t>(strip)]; }
    const Board& boardOf(const Hole& hole) const;
    int boardIndexOf(int hole) const;
    bool isFree(int hole) const { return layout_->jointOfHole[static_cast<std::size_t>(hole)] < 0; }
    /// The free holes of the strip of a hole that lie nearest to it, itself first if it is free; at most so many.
    std::vector<Hole> freeIn(const Hole& hole, std::size_t most) const;

    /// Jumpers between two places each, with ids that nothing has and colours that suit the rails that they reach.
    BenchChange joining(const std::vector<std::array<JumperEnd, 2>>& places) const;
    /// The tip put into a hole.
    BenchChange moved(const Tip& tip, const Hole& to) const;

    /// Whether hands can bring the bench to what the change says: its places are free, its parts reach, and everything has room.
    bool canBuild(const BenchChange& change) const;

    /// How much was looked at since the ground was made: holes, candidates and things near them. For tests of growth.
    std::size_t work() const { return work_; }
    void count(std::size_t looked) const { work_ += looked; }

private:
    void indexTips();
    void findFreeIds();
    void addTip(Tip tip, std::vector<int>& ofThing);

    std::shared_ptr<const Layout> layout_;
    std::unordered_map<std::string_view, int> boards_;
    std::vector<Tip> tips_;
    std::vector<std::vector<int>> tipsOfPart_, tipsOfJumper_, tipsIn_;
    std::vector<std::string> freeIds_;
    CircuitDigest circuit_;
    ThingsNear near_;
    mutable std::size_t work_ = 0;
};

}  // namespace tiepoint
