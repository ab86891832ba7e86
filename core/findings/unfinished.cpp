#include "core/findings/unfinished.h"

#include "core/base/disjoint_sets.h"
#include "core/behaviour/supply_nets.h"
#include "core/edit/holes.h"
#include "core/findings/rules.h"
#include "core/meter/meter.h"
#include "core/parts/sides.h"
#include "core/snapshot/lit.h"
#include "core/snapshot/readings.h"
#include "core/words/words.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

namespace tiepoint {
namespace {

constexpr double kNoVolt = 1e-3;

bool meterWorks(const Snapshot& snapshot, int part) {
    const auto reading = meterReading(snapshot, part);
    if (!reading || !reading->on || std::isnan(reading->value)) return false;
    if (reading->quantity == "voltage") return std::abs(reading->value) > kNoVolt;
    if (reading->quantity == "current") return std::abs(reading->value) > kNoCurrentAmpere;
    return true;
}

/// "longer leg" where a few words tell a lead from the others of its part; else nothing.
std::string legWords(const LeadSpec& lead) {
    constexpr std::string_view kThe = "the ";
    constexpr std::size_t kFew = 16;
    const std::string words = lead.description.substr(0, lead.description.find_first_of(",;"));
    return words.starts_with(kThe) && words.size() <= kFew + kThe.size() ? words.substr(kThe.size()) : std::string();
}

std::string lonelyPlace(const Bench& bench, const Hole& hole) {
    return say(isRail(hole.line) ? "open.aloneInRail" : "open.aloneInColumn", {{"hole", holeName(bench, hole)}});
}

/// The circuits of a bench, and what is open in each. A circuit is known by the root of its nets; nets of supplies belong to none.
class OpenCircuits {
public:
    explicit OpenCircuits(const Layout& layout)
        : layout_(layout),
          bench_(*layout.bench),
          supplies_(supplyNets(layout)),
          supplyNet_(static_cast<std::size_t>(layout.netCount), 0),
          meeting_(static_cast<std::size_t>(layout.netCount), 0),
          plugged_(layout.netOfStrip.size(), 0),
          joined_(static_cast<std::size_t>(layout.netCount)) {
        for (int part = 0; part < partCount(); ++part) {
            nets_.emplace_back(layout.netOfLead.begin() + layout.firstLead[part],
                               layout.netOfLead.begin() + layout.firstLead[part + 1]);
            for (const int net : nets_.back()) {
                if (isSupply(part)) supplyNet_[net] = 1;
                if (isSupply(part) || passes(part)) ++meeting_[net];
            }
        }
        for (int part = 0; part < partCount(); ++part) join(part);
        for (int part = 0; part < partCount(); ++part) {
            if (const int circuit = circuitOfPart(part); passes(part) && circuit != kNone)
                partsOf_[circuit].push_back(part);
        }
        for (const Joint& joint : layout.joints) {
            if (joint.hole >= 0) ++plugged_[layout.stripOfHole[joint.hole]];
        }
    }

    Unfinished find() {
        for (int part = 0; part < partCount(); ++part) findLegs(part);
        for (std::size_t jumper = 0; jumper < bench_.jumpers.size(); ++jumper) findEnds(jumper);
        findUnreached();
        if (!open_.empty() && supplies_.empty()) findSupplyLeads();
        return collected();
    }

private:
    static constexpr int kNone = -1;
    struct Found {
        OpenEnd end;
        int circuit;
    };

    int partCount() const { return static_cast<int>(bench_.parts.size()); }
    bool isSupply(int part) const { return bench_.parts[part].kind->isSupply; }
    /// Whether a part lets current through and drives none: no supply, no meter that only looks on.
    bool passes(int part) const { return !isSupply(part) && !looksOn(bench_.parts[part]); }
    int netOf(int part, int lead) const { return layout_.netOfLead[layout_.leadIndex(part, lead)]; }
    int circuitOf(int net) { return supplyNet_[net] ? kNone : joined_.root(net); }
    /// The circuit of a part; none where it lies across a supply's nets alone.
    int circuitOfPart(int part) {
        for (const int net : nets_[part])
            if (!supplyNet_[net]) return joined_.root(net);
        return kNone;
    }

    void join(int part) {
        if (!passes(part)) return;
        int before = kNone;
        for (const int net : nets_[part]) {
            if (supplyNet_[net]) continue;
            if (before != kNone) joined_.join(before, net);
            before = net;
        }
    }

    bool isAlone(int net) const { return !supplyNet_[net] && meeting_[net] <= 1; }
    bool isDeadEnd(const Joint& joint) const {
        return joint.hole >= 0 && plugged_[layout_.stripOfHole[joint.hole]] == 1;
    }

    void findLegs(int part) {
        const Part& it = bench_.parts[part];
        if (!passes(part) || isMeter(*it.kind)) return;
        const std::vector<int> sides = sidesOf(*it.kind);
        std::vector<int> alone;
        for (const int side : sides)
            if (isAlone(netOf(part, side))) alone.push_back(side);
        std::size_t met = sides.size() - alone.size();
        if (alone.size() == sides.size() && nets_[part].size() == 1) return addBypassed(part);
        for (const int side : alone) {
            if (met >= kSidesNeeded) return;
            ++met;
            addLeg(part, side);
        }
    }

    void addBypassed(int part) {
        const auto& hole = bench_.parts[part].leads.front();
        open_.push_back(
            {{{bench_.parts[part].id}, hole, bench_.parts[part].id, say("open.oneMetal")}, circuitOfPart(part)});
    }

    void addLeg(int part, int lead) {
        const Part& it = bench_.parts[part];
        const int net = netOf(part, lead);
        OpenEnd end{{it.id}, it.leads[lead], it.id, say("open.free")};
        if (const std::string words = legWords(it.kind->leads[lead]); !words.empty())
            end.what = say("open.leg", {{"part", it.id}, {"leg", words}});
        for (std::size_t jumper = 0; jumper < bench_.jumpers.size(); ++jumper) {
            for (const int at : layout_.jumperJoints[jumper]) {
                const Joint& joint = layout_.joints[at];
                if (joint.net != net || !isDeadEnd(joint)) continue;
                told_.insert(jumper);
                end.things.push_back(bench_.jumpers[jumper].id);
                end.what = say("open.jumperFrom", {{"jumper", bench_.jumpers[jumper].id}, {"part", it.id}});
                end.hole = layout_.holeAt(joint.hole);
            }
        }
        if (end.hole) end.place = lonelyPlace(bench_, *end.hole);
        open_.push_back({std::move(end), circuitOf(net)});
    }

    /// Ends of jumpers that meet nothing. One from a supply into an unused rail is how rails are made ready.
    void findEnds(std::size_t jumper) {
        if (told_.contains(jumper)) return;
        for (const int at : layout_.jumperJoints[jumper]) {
            const Joint& joint = layout_.joints[at];
            if (!isDeadEnd(joint)) continue;
            const Hole hole = layout_.holeAt(joint.hole);
            if (supplyNet_[joint.net] && isRail(hole.line)) continue;
            const std::string& id = bench_.jumpers[jumper].id;
            open_.push_back({{{id}, hole, id, lonelyPlace(bench_, hole)}, circuitOf(joint.net)});
        }
    }

    /// What a circuit still needs of a supply.
    enum class Missing { Nothing, Plus, Minus, Both };
    Missing missingIn(int circuit) const {
        std::map<int, std::set<int>> touched;  // by group of supplies: their nets
        for (const int part : partsOf_.at(circuit)) {
            for (const SupplyNets& supply : supplies_) {
                for (const int net : {supply.plus, supply.minus})
                    if (nets_[part].contains(net)) touched[supply.group].insert(net);
            }
        }
        Missing missing = Missing::Both;
        for (const auto& [group, nets] : touched) {
            if (nets.size() > 1) return Missing::Nothing;
            const int only = *nets.begin();
            const bool plus =
                std::ranges::any_of(supplies_, [only](const SupplyNets& supply) { return supply.plus == only; });
            missing = plus ? Missing::Minus : Missing::Plus;
        }
        return missing;
    }

    void findUnreached() {
        std::map<int, std::vector<std::size_t>> endsOf;
        for (std::size_t i = 0; i < open_.size(); ++i) endsOf[open_[i].circuit].push_back(i);
        for (const auto& [circuit, parts] : partsOf_) {
            const Missing missing = missingIn(circuit);
            if (missing == Missing::Nothing) continue;
            const auto& ends = endsOf[circuit];
            if (ends.empty()) addUnreached(circuit, missing);
            if (ends.size() != 1 || missing == Missing::Both) continue;
            std::string& what = open_[ends.front()].end.what;
            what = say(missing == Missing::Plus ? "open.toPlus" : "open.toMinus", {{"what", what}});
        }
    }

    void addUnreached(int circuit, Missing missing) {
        OpenEnd end;
        for (const int part : partsOf_[circuit])
            if (!isMeter(*bench_.parts[part].kind)) end.things.push_back(bench_.parts[part].id);
        if (end.things.empty()) return;  // test leads that touch each other
        constexpr std::size_t kMostNamed = 3;
        end.what = sayList(std::span(end.things).first(std::min(end.things.size(), kMostNamed)), "list.comma");
        if (end.things.size() > kMostNamed) end.what = say("open.more", {{"parts", end.what}});
        end.place = say(missing == Missing::Both    ? "open.notBoth"
                        : missing == Missing::Minus ? "open.notMinus"
                                                    : "open.notPlus");
        open_.push_back({std::move(end), circuit});
    }

    /// Said beside other ends only, and where no supply is plugged in: one may lie in reserve.
    void findSupplyLeads() {
        for (int part = 0; part < partCount(); ++part) {
            const Part& it = bench_.parts[part];
            for (int lead = 0; isSupply(part) && lead < static_cast<int>(it.leads.size()); ++lead) {
                const LeadSpec& spec = it.kind->leads[lead];
                if (spec.socket || it.leads[lead]) continue;
                const std::string words = legWords(spec);
                open_.push_back({{{it.id},
                                  std::nullopt,
                                  say("open.leg", {{"part", it.id}, {"leg", words.empty() ? spec.name : words}}),
                                  say("open.free")},
                                 kNone});
            }
        }
    }

    Unfinished collected() {
        Unfinished found;
        std::set<std::string> things;
        std::set<int> circuits;
        for (Found& each : open_) {
            things.insert(each.end.things.begin(), each.end.things.end());
            if (each.circuit != kNone) circuits.insert(each.circuit);
            found.open.push_back(std::move(each.end));
        }
        for (int part = 0; part < partCount(); ++part)
            if (!isSupply(part) && circuits.contains(circuitOfPart(part))) things.insert(bench_.parts[part].id);
        for (std::size_t jumper = 0; jumper < bench_.jumpers.size(); ++jumper) {
            const int net = layout_.joints[layout_.jumperJoints[jumper][0]].net;
            if (circuits.contains(circuitOf(net))) things.insert(bench_.jumpers[jumper].id);
        }
        found.things.assign(things.begin(), things.end());
        return found;
    }

    const Layout& layout_;
    const Bench& bench_;
    std::vector<SupplyNets> supplies_;
    std::vector<std::set<int>> nets_;          ///< by part
    std::map<int, std::vector<int>> partsOf_;  ///< by circuit
    std::vector<char> supplyNet_;              ///< by net
    std::vector<int> meeting_;                 ///< by net: parts that meet there; meters that only look on don't count
    std::vector<int> plugged_;                 ///< by strip
    DisjointSets joined_;                      ///< nets
    std::set<std::size_t> told_;               ///< jumpers that a part's leg runs out through
    std::vector<Found> open_;
};

}  // namespace

bool works(const Snapshot& snapshot) {
    if (snapshot.status() != Status::Solved) return false;
    for (int part = 0; part < static_cast<int>(snapshot.layout->bench->parts.size()); ++part)
        if (isLit(snapshot, part) || meterWorks(snapshot, part)) return true;
    return false;
}

Unfinished unfinished(const Snapshot& snapshot, bool hasWorked) {
    if (hasWorked || works(snapshot)) return {};
    const Bench& bench = *snapshot.layout->bench;
    if (isSound(bench)) return OpenCircuits(*snapshot.layout).find();
    // What is broken inside nobody has left open.
    return OpenCircuits(*buildLayout(std::make_shared<const Bench>(soundOf(bench)))).find();
}

bool isTold(const Unfinished& unfinished, const Finding& finding) {
    if (unfinished.isEmpty()) return true;
    const Rule* rule = findRule(finding.rule);
    if (rule && rule->atOnce) return true;
    if (finding.severity == Severity::Remark || finding.parts.empty()) return false;
    return std::ranges::none_of(
        finding.parts, [&](const std::string& part) { return std::ranges::binary_search(unfinished.things, part); });
}

}  // namespace tiepoint
