// Two parts resemble each other as far as they are of one kind and value and their nets resemble each other; two nets as far as the parts on them
// do. A few rounds of that, from "all nets are alike", carry what is near by to where it helps to tell (the idea of S. Melnik,
// H. Garcia-Molina and E. Rahm, "Similarity flooding", ICDE 2002; from memory).

#include "core/netlist/resemblance.h"

#include "core/base/stopping.h"
#include "core/netlist/graph_match.h"
#include "core/netlist/symmetry.h"

#include <algorithm>
#include <map>
#include <tuple>
#include <utility>

namespace tiepoint {
namespace {

constexpr int kFloodingRounds = 6;
constexpr double kShareOfLook = 0.4;       ///< the rest is what its terminals lead to
constexpr double kLookOfOtherValue = 0.6;  ///< of a part whose values differ

bool settingsAlike(const ValueSpec& spec, double a, double b, double tolerance) {
    const bool measured = spec.type == ValueType::Number && !spec.integer;
    return a == b || (measured && alike(a, b, tolerance));
}

class Flooding {
public:
    Flooding(const CircuitSide& first, const CircuitSide& second, const Likeness& likeness) : a_(first), b_(second) {
        found_.nets = Grid<double>(first.contacts.size(), second.contacts.size(), 1);
        look_ = Grid<double>(first.netlist.parts.size(), second.netlist.parts.size());
        found_.apart = Grid<int>(first.netlist.parts.size(), second.netlist.parts.size());
        SettingsCompared settings(likeness);
        for (const int p : a_.parts) {
            for (const int q : b_.parts) {
                const Part &one = a_.netlist.parts[p], &other = b_.netlist.parts[q];
                if (one.kind != other.kind) continue;
                found_.apart.at(p, q) = settings(one, other).count();
                look_.at(p, q) = found_.apart.at(p, q) == 0 ? 1 : kLookOfOtherValue;
            }
        }
        found_.parts = look_;
    }

    Resemblance run() {
        for (int round = 0; round < kFloodingRounds; ++round) {
            for (const int p : a_.parts) {
                stopIfAsked();
                for (const int q : b_.parts) {
                    if (look_.at(p, q) > 0)
                        found_.parts.at(p, q) = kShareOfLook * look_.at(p, q) + (1 - kShareOfLook) * around(p, q);
                }
            }
            for (int x = 0; x < a_.netCount(); ++x) {
                stopIfAsked();
                for (int y = 0; y < b_.netCount(); ++y) found_.nets.at(x, y) = netsAlike(x, y);
            }
        }
        return std::move(found_);
    }

private:
    double around(int p, int q) const {
        double best = 0;
        for (const std::vector<int>& order : a_.exchanges[p]) {
            double sum = 0;
            for (std::size_t slot = 0; slot < order.size(); ++slot) {
                const int x = a_.netOf[p][slot], y = b_.netOf[q][order[slot]];
                sum += x < 0 || y < 0 ? (x < 0 && y < 0 ? 1 : 0) : found_.nets.at(x, y);
            }
            best = std::max(best, sum / static_cast<double>(order.size()));
        }
        return best;
    }

    /// The parts on both, paired off from the most alike down.
    double netsAlike(int x, int y) {
        const auto &ours = a_.contacts[x], &theirs = b_.contacts[y];
        if (ours.empty() || theirs.empty()) return 0;
        pairs_.clear();
        for (int i = 0; i < std::ssize(ours); ++i) {
            for (int j = 0; j < std::ssize(theirs); ++j) {
                const double alike = found_.parts.at(ours[i].part, theirs[j].part);
                if (alike > 0 && mayMeet(ours[i], theirs[j])) pairs_.emplace_back(-alike, i, j);
            }
        }
        std::ranges::sort(pairs_);
        takenOurs_.assign(ours.size(), 0);
        takenTheirs_.assign(theirs.size(), 0);
        double sum = 0;
        for (const auto& [alike, i, j] : pairs_) {
            if (takenOurs_[i] || takenTheirs_[j]) continue;
            takenOurs_[i] = takenTheirs_[j] = 1;
            sum -= alike;
        }
        return sum / static_cast<double>(std::max(ours.size(), theirs.size()));
    }

    bool mayMeet(const CircuitSide::Contact& one, const CircuitSide::Contact& other) const {
        return std::ranges::any_of(a_.exchanges[one.part],
                                   [&](const std::vector<int>& order) { return order[one.slot] == other.slot; });
    }

    const CircuitSide &a_, &b_;
    Grid<double> look_;
    Resemblance found_;
    std::vector<std::tuple<double, int, int>> pairs_;
    std::vector<char> takenOurs_, takenTheirs_;
};

}  // namespace

CircuitSide::CircuitSide(const Netlist& circuit, const Likeness& likeness)
    : netlist(circuit),
      wiring(wiringOf(circuit, likeness.unusedParts)),
      contacts(circuit.nets.size()) {
    std::map<std::tuple<const PartKind*, std::vector<Setting>, std::vector<Setting>>, std::vector<std::vector<int>>>
        known;
    const Terminals& terminals = wiring.terminals;
    for (int part = 0; part < std::ssize(circuit.parts); ++part) {
        std::vector<int>& nets = netOf.emplace_back();
        for (int slot = 0; slot < terminals.countOf(part); ++slot) {
            const int net = terminals.netOf[terminals.firstOfPart[part] + slot];
            const bool joins = net >= 0 && wiring.counts[part] && wiring.terminalsOn[net] > 1;
            nets.push_back(joins ? net : -1);
            if (joins) contacts[net].push_back({part, slot});
        }
        const Part& each = circuit.parts[part];
        const auto [found, isNew] = known.try_emplace({each.kind, each.values, each.state});
        if (isNew) found->second = exchangesOf(each, likeness);
        exchanges.push_back(found->second);
        if (wiring.counts[part]) parts.push_back(part);
    }
}

const std::vector<int>& SettingsCompared::countedValues(const PartKind& kind) {
    const auto [known, isNew] = counted_.try_emplace(&kind);
    for (int i = 0; isNew && i < std::ssize(kind.values); ++i)
        if (valueCounts(kind.values[i], kind, likeness_)) known->second.push_back(i);
    return known->second;
}

SettingsApart SettingsCompared::operator()(const Part& a, const Part& b) {
    SettingsApart apart;
    const PartKind& kind = *a.kind;
    for (const int i : countedValues(kind)) {
        if (!settingsAlike(kind.values[i], a.value(i), b.value(i), likeness_.tolerance)) apart.values.push_back(i);
    }
    for (int i = 0; likeness_.states && i < std::ssize(kind.state); ++i) {
        if (!settingsAlike(kind.state[i], a.stateValue(i), b.stateValue(i), likeness_.tolerance))
            apart.states.push_back(i);
    }
    return apart;
}

Resemblance resemblanceOf(const CircuitSide& first, const CircuitSide& second, const Likeness& likeness) {
    return Flooding(first, second, likeness).run();
}

}  // namespace tiepoint
