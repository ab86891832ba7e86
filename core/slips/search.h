#pragma once
// One search for slips of one kind: where it looks, which way, and what it finds. A kind's function walks over the things of the scope and
// offers changes; the search leaves out what changes nothing, and list.cpp keeps what can be built.

#include "core/slips/scope.h"
#include "core/slips/slip.h"

#include <optional>
#include <vector>

namespace tiepoint {

/// A change that may be a slip, in the ways in which it can be carried out: the same circuit by neighbouring holes, the most natural first.
struct SlipCandidate {
    Slip slip;
    std::vector<BenchChange> ways;
};

class SlipSearch {
public:
    /// `wanted`: the digest of the only circuit that is looked for; nothing: any.
    SlipSearch(const SlipKind& kind, const Ground& ground, const Scope& scope, bool backwards,
               std::optional<std::uint64_t> wanted = {})
        : kind_(kind),
          ground_(ground),
          scope_(scope),
          backwards_(backwards),
          wanted_(wanted) {}

    const Ground& ground() const { return ground_; }
    const Bench& bench() const { return ground_.bench(); }
    const Scope& scope() const { return scope_; }
    /// Whether slips are undone that were made; else such are made.
    bool backwards() const { return backwards_; }

    /// Shows each part, or each jumper, of the scope: see(index, away). Stops where it is asked to.
    template <class See>
    void eachPart(See&& see) const {
        for (const Scope::Thing& thing : scope_.things()) {
            if (!thing.jumper) turn(), see(thing.index, thing.away);
        }
    }
    template <class See>
    void eachJumper(See&& see) const {
        for (const Scope::Thing& thing : scope_.things()) {
            if (thing.jumper) turn(), see(thing.index, thing.away);
        }
    }
    /// Shows each tip that a hand can move by itself: see(tip, away).
    template <class See>
    void eachTip(See&& see) const {
        for (const Scope::Thing& thing : scope_.things()) {
            turn();
            for (const int index : thing.jumper ? ground_.tipsOfJumper(thing.index) : ground_.tipsOfPart(thing.index)) {
                if (ground_.tips()[index].alone) see(ground_.tips()[index], thing.away);
            }
        }
    }

    /// Whether another circuit than the bench's is looked for at all. What is dear to offer is asked about first.
    bool isWanted(std::uint64_t circuit) const {
        return wanted_ ? circuit == *wanted_ : circuit != ground_.circuit().now();
    }
    /// What is offered from now on is told by this part; empty: by none.
    void tellBy(std::string id) { about_ = std::move(id); }
    /// A change of the bench; `share`: how much rarer than the usual slip of the kind.
    void offer(BenchChange change, int away, double share = 1) { offer(std::vector{std::move(change)}, away, share); }
    /// The same where any of several ways will do.
    void offer(std::vector<BenchChange> ways, int away, double share = 1);
    /// The tip put into the strip of a hole: there if it is free, or else into another hole of the strip.
    void offerMove(const Tip& tip, const Hole& to, int away, double share = 1);
    /// The tip put into one of some holes that are one metal, the first that is free.
    void offerMove(const Tip& tip, const std::vector<Hole>& to, int away, double share = 1);

    std::vector<SlipCandidate> take() { return std::move(found_); }

private:
    void turn() const;
    bool leadsOn(const BenchChange& change) const;

    const SlipKind& kind_;
    const Ground& ground_;
    const Scope& scope_;
    bool backwards_;
    std::optional<std::uint64_t> wanted_;
    std::string about_;
    std::vector<SlipCandidate> found_;
};

}  // namespace tiepoint
