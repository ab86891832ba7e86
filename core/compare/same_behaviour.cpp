// Both benches are solved in the same positions: all that either would be looked at in by itself (core/behaviour/position_plan.h), each
// position once. A way of pairing controls and lights that shows no difference in any of them proves that the benches do the same. The first way
// is that of the circuits; a slide or a knob that lies the other way round is tried both ways. Where the circuits differ, so that it is open which
// switch does whose work, other pairings are tried, as long as they are few; lights are then matched column by column. In a position where all
// controls that may stand for each other stand alike, no pairing changes what is compared: lights that have no match there differ under every
// pairing, and where a pairing shows no more differences than that, none shows fewer.

#include "core/compare/same_behaviour.h"

#include "core/base/stopping.h"
#include "core/compare/behaviour_words.h"
#include "core/compare/doing.h"
#include "core/compare/readings_there.h"
#include "core/snapshot/lit.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>
#include <optional>
#include <set>
#include <utility>

namespace tiepoint {
namespace {

constexpr std::size_t kMostPairings = 400;  ///< ways of pairing controls that are tried
constexpr std::size_t kMostOrders = 5040;   ///< orders of controls that are looked at: those of seven
constexpr std::size_t kMostSeen = 4;        ///< differences of behaviour; more say nothing new

/// One way of saying which control and which light of the target is which of the bench; by those of the target.
struct Pairing {
    std::vector<int> control;
    std::vector<char> flipped;
    std::vector<int> light;

    Digits onBench(const Digits& target, const Doing& mine) const {
        Digits digits(mine.controls().size(), 0);
        for (std::size_t c = 0; c < target.size(); ++c) {
            const int own = control[c], last = mine.controls()[static_cast<std::size_t>(own)].values - 1;
            digits[static_cast<std::size_t>(own)] = flipped[c] ? last - target[c] : target[c];
        }
        return digits;
    }
    Digits onTarget(const Digits& mine, const Doing& target) const {
        Digits digits(target.controls().size(), 0);
        for (std::size_t c = 0; c < digits.size(); ++c) {
            const int at = mine[static_cast<std::size_t>(control[c])];
            digits[c] = flipped[c] ? target.controls()[c].values - 1 - at : at;
        }
        return digits;
    }
};

bool likeControls(const Throw& a, const Throw& b) {
    return a.isCap() == b.isCap() && a.isKnob == b.isKnob && a.values == b.values;
}

class BehaviourComparing {
public:
    BehaviourComparing(const ComparedSide& mine, const ComparedSide& target, const KnownPartners& partners,
                       const ComparisonBounds& bounds, bool onlyUsed)
        : mine_(mine, onlyUsed),
          target_(target, onlyUsed),
          readings_(mine, target, partners, bounds),
          partners_(partners),
          bounds_(bounds) {}

    /// Whether both have as many controls and as many lights.
    bool sameCounts() const {
        return mine_.controls().size() == target_.controls().size() && mine_.lights().size() == target_.lights().size();
    }

    BehaviourCompared run() {
        BehaviourCompared result;
        result.allPositions = mine_.complete() && target_.complete();
        if (mine_.controls().size() != target_.controls().size()) {
            result.seen.push_back(BehaviourWords::countsApart("switch or knob", "switches and knobs",
                                                              mine_.controls().size(), target_.controls().size()));
        }
        if (mine_.lights().size() != target_.lights().size())
            result.seen.push_back(
                BehaviourWords::countsApart("light", "lights", mine_.lights().size(), target_.lights().size()));
        if (!result.seen.empty()) return result;
        Pairing first = knownPairing();
        if (first.control.empty() && !target_.controls().empty()) {
            result.seen.push_back({"The switches are of other kinds than those of the target.",
                                   "Look at your switches.",
                                   {},
                                   {},
                                   {},
                                   {}});
            return result;
        }
        result.seen = bestOf(first);
        result.same = result.seen.empty();
        return result;
    }

private:
    /// By the circuits; what they leave open in the order of the benches. Without controls where the kinds don't go together.
    Pairing knownPairing() const {
        Pairing pairing;
        std::set<int> used;
        pairing.control.assign(target_.controls().size(), -1);
        pairing.flipped.assign(target_.controls().size(), 0);
        const auto pair = [&](bool byPartner) {
            for (std::size_t c = 0; c < pairing.control.size(); ++c) {
                if (pairing.control[c] >= 0) continue;
                const Throw& wanted = target_.controls()[c];
                for (int own = 0; own < std::ssize(mine_.controls()); ++own) {
                    const Throw& offered = mine_.controls()[static_cast<std::size_t>(own)];
                    const bool fits =
                        !byPartner || partners_.partOf[static_cast<std::size_t>(offered.part)] == wanted.part;
                    if (!fits || used.contains(own) || !likeControls(wanted, offered)) continue;
                    pairing.control[c] = own;
                    used.insert(own);
                    break;
                }
            }
        };
        pair(true);
        pair(false);
        if (std::ranges::find(pairing.control, -1) != pairing.control.end()) pairing.control.clear();
        return pairing;
    }

    /// The differences under the pairing that shows the fewest, none as soon as one shows none.
    std::vector<BenchDifference> bestOf(const Pairing& first) {
        std::optional<std::vector<BenchDifference>> best;
        std::size_t tried = 0, orders = 0;
        const std::size_t fewest = fewestUnderAny(first);
        std::vector<int> order(first.control.size());
        std::iota(order.begin(), order.end(), 0);
        do {
            Pairing pairing = first;
            for (std::size_t c = 0; c < order.size(); ++c)
                pairing.control[c] = first.control[static_cast<std::size_t>(order[c])];
            if (++orders > kMostOrders) break;
            if (!goesTogether(pairing)) continue;
            for (const std::vector<char>& flips : flipsOf(pairing)) {
                stopIfAsked();
                pairing.flipped = flips;
                pairLights(pairing);
                std::vector<BenchDifference> seen = differencesUnder(pairing);
                if (seen.size() <= fewest) return seen;
                if (!best || seen.size() < best->size()) best = std::move(seen);
                if (++tried >= kMostPairings) return *best;
            }
            if (partners_.equal) break;  // the circuits say which switch is which
        } while (std::ranges::next_permutation(order).found);
        return best.value_or(std::vector<BenchDifference>{});
    }

    /// No pairing shows fewer differences than this.
    std::size_t fewestUnderAny(const Pairing& first) {
        std::size_t fewest = 0;
        for (const Digits& there : target_.positions()) {
            const Digits here = first.onBench(there, mine_);
            if (!isAlikeForAll(there, here)) continue;
            if (target_.at(there).status() == Status::None || mine_.at(here).status() == Status::None) return 0;
            Suits suits(target_.lights().size(), std::vector<char>(mine_.lights().size(), 1));
            keepAlike(there, here, suits);
            std::vector<int> by(mine_.lights().size(), -1);
            std::size_t matched = 0;
            for (std::size_t light = 0; light < suits.size(); ++light) {
                std::vector<char> seen(by.size(), 0);
                matched += augment(static_cast<int>(light), suits, by, seen);
            }
            fewest = std::max(fewest, suits.size() - matched);
        }
        return std::min(fewest, kMostSeen);
    }

    /// Whether controls that may be paired with each other, or turned round, all stand alike: then every pairing brings these two together.
    bool isAlikeForAll(const Digits& there, const Digits& here) const {
        for (std::size_t c = 0; c < there.size(); ++c) {
            const Throw& control = target_.controls()[c];
            if (canBeTurned(control)) return false;
            for (std::size_t own = 0; own < here.size(); ++own)
                if (likeControls(control, mine_.controls()[own]) && here[own] != there[c]) return false;
        }
        return true;
    }

    bool canBeTurned(const Throw& control) const {
        if (control.isCap()) return false;
        const ValueSpec& state = target_.side().part(control.part).kind->state[static_cast<std::size_t>(control.state)];
        return state.type != ValueType::Switch;
    }

    bool goesTogether(const Pairing& pairing) const {
        for (std::size_t c = 0; c < pairing.control.size(); ++c) {
            if (!likeControls(target_.controls()[c], mine_.controls()[static_cast<std::size_t>(pairing.control[c])]))
                return false;
        }
        return true;
    }

    /// Slides and knobs may lie either way round; caps and levers say themselves what is on.
    std::vector<std::vector<char>> flipsOf(const Pairing& pairing) const {
        std::vector<std::size_t> turnable;
        for (std::size_t c = 0; c < pairing.control.size(); ++c) {
            if (canBeTurned(target_.controls()[c])) turnable.push_back(c);
        }
        constexpr std::size_t kMostTurned = 6;
        if (turnable.size() > kMostTurned) turnable.resize(kMostTurned);
        std::vector<std::vector<char>> all;
        for (std::size_t bits = 0; bits < (std::size_t{1} << turnable.size()); ++bits) {
            std::vector<char> flips(pairing.control.size(), 0);
            for (std::size_t t = 0; t < turnable.size(); ++t) flips[turnable[t]] = (bits >> t) & 1;
            all.push_back(std::move(flips));
        }
        return all;
    }

    /// All positions that either bench is looked at in, as the target has them.
    std::vector<Digits> positionsUnder(const Pairing& pairing) const {
        std::vector<Digits> positions = target_.positions();
        std::set<Digits> known(positions.begin(), positions.end());
        for (const Digits& own : mine_.positions()) {
            Digits there = pairing.onTarget(own, target_);
            if (known.insert(there).second) positions.push_back(std::move(there));
        }
        return positions;
    }

    /// By light of the target, by light of the bench: whether they look alike.
    using Suits = std::vector<std::vector<char>>;

    bool alike(const Doing::Look& there, const Doing::Look& here) const {
        return there.lit == here.lit && std::abs(there.brightness - here.brightness) <= bounds_.brightness;
    }

    /// Takes out those that don't look alike in a position.
    void keepAlike(const Digits& there, const Digits& here, Suits& suits) {
        const auto &looks = target_.looksAt(there), &own = mine_.looksAt(here);
        const bool comparable = target_.at(there).status() == mine_.at(here).status();
        for (std::size_t l = 0; l < suits.size(); ++l) {
            for (std::size_t o = 0; o < suits[l].size(); ++o)
                suits[l][o] = suits[l][o] && comparable && alike(looks[l], own[o]);
        }
    }

    /// By the circuits where they are one; else each light to one that looks alike in all positions, as far as it goes (augmenting paths).
    void pairLights(Pairing& pairing) {
        const auto &lights = target_.lights(), &own = mine_.lights();
        pairing.light.assign(lights.size(), -1);
        std::vector<int> by(own.size(), -1);  // by light of the bench: that of the target
        const auto byPartner = [&](std::size_t light) {
            for (std::size_t o = 0; o < own.size(); ++o) {
                if (partners_.partOf[static_cast<std::size_t>(own[o])] != lights[light]) continue;
                pairing.light[light] = static_cast<int>(o);
                by[o] = static_cast<int>(light);
            }
        };
        if (partners_.equal) {
            for (std::size_t light = 0; light < lights.size(); ++light) byPartner(light);
        } else {
            const auto suits = suitingLights(pairing);
            for (std::size_t light = 0; light < lights.size(); ++light) {
                std::vector<char> seen(own.size(), 0);
                augment(static_cast<int>(light), suits, by, seen);
            }
            for (std::size_t o = 0; o < by.size(); ++o)
                if (by[o] >= 0) pairing.light[static_cast<std::size_t>(by[o])] = static_cast<int>(o);
            for (std::size_t light = 0; light < lights.size();
                 ++light) {  // a difference is told of partners where they are free
                if (pairing.light[light] < 0) claimPartner(light, pairing, by);
            }
        }
        for (std::size_t light = 0; light < lights.size(); ++light) {
            if (pairing.light[light] >= 0) continue;
            const auto free = std::ranges::find(by, -1);
            pairing.light[light] = static_cast<int>(free - by.begin());
            *free = static_cast<int>(light);
        }
    }

    void claimPartner(std::size_t light, Pairing& pairing, std::vector<int>& by) const {
        for (std::size_t o = 0; o < by.size(); ++o) {
            const int own = mine_.lights()[o];
            if (by[o] >= 0 || partners_.partOf[static_cast<std::size_t>(own)] != target_.lights()[light]) continue;
            pairing.light[light] = static_cast<int>(o);
            by[o] = static_cast<int>(light);
            return;
        }
    }

    Suits suitingLights(const Pairing& pairing) {
        Suits suits(target_.lights().size(), std::vector<char>(mine_.lights().size(), 1));
        for (const Digits& position : positionsUnder(pairing))
            keepAlike(position, pairing.onBench(position, mine_), suits);
        return suits;
    }

    static bool augment(int light, const Suits& suits, std::vector<int>& by, std::vector<char>& seen) {
        for (std::size_t o = 0; o < by.size(); ++o) {
            if (!suits[static_cast<std::size_t>(light)][o] || std::exchange(seen[o], 1)) continue;
            if (by[o] >= 0 && !augment(by[o], suits, by, seen)) continue;
            by[o] = light;
            return true;
        }
        return false;
    }

    std::vector<BenchDifference> differencesUnder(const Pairing& pairing) {
        std::vector<BenchDifference> seen;
        std::set<int> toldLights;
        std::set<std::string> toldReadings;
        for (const Digits& position : positionsUnder(pairing)) {
            const Digits own = pairing.onBench(position, mine_);
            const Snapshot &there = target_.at(position), &here = mine_.at(own);
            if (there.status() != here.status() && (there.status() == Status::None || here.status() == Status::None)) {
                seen.push_back(words_.noAnswer(here.status() == Status::None, own));
                return seen;
            }
            const auto &looks = target_.looksAt(position), &ownLooks = mine_.looksAt(own);
            for (std::size_t l = 0; l < pairing.light.size(); ++l) {
                const auto o = static_cast<std::size_t>(pairing.light[l]);
                const int light = target_.lights()[l], lamp = mine_.lights()[o];
                const bool isAlike = there.status() == here.status() && alike(looks[l], ownLooks[o]);
                if (isAlike || !toldLights.insert(light).second) continue;
                seen.push_back(words_.lightApart(there, light, here, lamp, own));
            }
            readingsApart(there, here, own, toldReadings, seen);
            if (seen.size() >= kMostSeen) break;
        }
        return seen;
    }

    void readingsApart(const Snapshot& there, const Snapshot& here, const Digits& own, std::set<std::string>& told,
                       std::vector<BenchDifference>& seen) const {
        for (const ReadingApart& apart : readings_.apartIn(there, here)) {
            if (!told.insert(apart.reading->id).second) continue;
            BenchDifference each;
            each.text = words_.position(own) + apart.text;
            each.look = "Measure again: does every reading agree with the task?";
            if (const auto thing = thingOf(apart.reading->of); !thing.empty()) each.targetParts.emplace_back(thing);
            if (const auto* volts = std::get_if<VoltsAt>(&apart.reading->of)) each.targetHoles = {volts->hole};
            if (const auto* volts = std::get_if<VoltsBetween>(&apart.reading->of))
                each.targetHoles = {volts->first, volts->second};
            seen.push_back(std::move(each));
        }
    }

    Doing mine_, target_;
    BehaviourWords words_{mine_, target_};
    ReadingsThere readings_;
    const KnownPartners& partners_;
    const ComparisonBounds& bounds_;
};

}  // namespace

BehaviourCompared compareBehaviour(const ComparedSide& mine, const ComparedSide& target, const KnownPartners& partners,
                                   const ComparisonBounds& bounds) {
    // A loose button does nothing and needs no partner. But where a part that is used on one bench lies loose on the other, all count.
    BehaviourComparing used(mine, target, partners, bounds, true);
    if (used.sameCounts()) return used.run();
    return BehaviourComparing(mine, target, partners, bounds, false).run();
}

}  // namespace tiepoint
