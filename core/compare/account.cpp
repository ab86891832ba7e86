// From leads on other nets to what a person would say. Leads that all moved together are one difference: a net that fell in two lacks a joint,
// two nets that became one have a joint too many. A part of two ends whose leads stand where each other's should is the wrong way round.

#include "core/compare/account.h"

#include "core/base/capital.h"
#include "core/bench/describe.h"
#include "core/edit/holes.h"
#include "core/slips/slip_words.h"
#include "core/snapshot/throws.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <optional>
#include <set>
#include <utility>

namespace tiepoint {
namespace {

using Moved = CircuitDifference::MovedLead;

/// A lead of one side, where it is and what it is called.
struct SideLead {
    int part = -1, lead = -1;
};

class AccountWriter {
public:
    AccountWriter(const ComparedSide& mine, const ComparedSide& target, const CircuitDifference& difference)
        : mine_(mine),
          target_(target),
          difference_(difference),
          myNetOf_(target.circuit->nets.size(), -1) {
        for (std::size_t net = 0; net < difference.netOf.size(); ++net)
            if (difference.netOf[net] >= 0)
                myNetOf_[static_cast<std::size_t>(difference.netOf[net])] = static_cast<int>(net);
    }

    std::vector<BenchDifference> run() {
        std::vector<Moved> moved = difference_.movedLeads;
        tellReversed(moved);
        tellMissingJoints(moved);
        tellExtraJoints(moved);
        for (const Moved& each : moved) tellMoved(each);
        for (const auto& setting : difference_.otherSettings) tellSetting(setting);
        for (const int part : difference_.onlyInFirst) tellExtra(part);
        for (const int part : difference_.onlyInSecond) tellMissing(part);
        return std::move(told_);
    }

private:
    static std::string nameOf(const ComparedSide& side, SideLead at) {
        return tipInWords(side.bench(), PlacedLead{side.part(at.part).id, at.lead, {}});
    }
    static std::optional<Hole> holeOf(const ComparedSide& side, SideLead at) {
        return side.part(at.part).leads[static_cast<std::size_t>(at.lead)];
    }
    /// "D1's anode in c15"; without a hole only the name.
    static std::string nameAndHole(const ComparedSide& side, SideLead at) {
        const auto hole = side.hasPlaces ? holeOf(side, at) : std::nullopt;
        const std::string name = nameOf(side, at);
        return hole ? fmt::format("{} ({})", name, holeName(side.bench(), *hole)) : name;
    }
    void addPlace(BenchDifference& told, SideLead at) const {
        addId(told.parts, mine_.part(at.part).id);
        if (const auto hole = holeOf(mine_, at)) told.holes.push_back(*hole);
    }
    void addTargetPlace(BenchDifference& told, SideLead at) const {
        addId(told.targetParts, target_.part(at.part).id);
        if (const auto hole = holeOf(target_, at); hole && target_.hasPlaces) told.targetHoles.push_back(*hole);
    }
    static void addId(std::vector<std::string>& ids, const std::string& id) {
        if (std::ranges::find(ids, id) == ids.end()) ids.push_back(id);
    }

    /// Somebody on a net of the bench who stays there, other than one part.
    std::optional<SideLead> companyOn(const ComparedSide& side, int net, const std::set<std::pair<int, int>>& without,
                                      int notOfPart) const {
        if (net < 0) return std::nullopt;
        std::optional<SideLead> found;
        for (int part = 0; part < std::ssize(side.circuit->parts); ++part) {
            if (part == notOfPart) continue;
            const auto& leads = side.circuit->leads[static_cast<std::size_t>(part)];
            for (int lead = 0; lead < std::ssize(leads); ++lead) {
                if (leads[static_cast<std::size_t>(lead)] != net || without.contains({part, lead})) continue;
                // A supply says least about where: any other part first.
                if (!side.part(part).kind->isSupply) return SideLead{part, lead};
                if (!found) found = SideLead{part, lead};
            }
        }
        return found;
    }

    /// The leads of the bench that don't stand where they should, but for those of one part.
    std::set<std::pair<int, int>> movedLeads() const {
        std::set<std::pair<int, int>> all;
        for (const Moved& each : difference_.movedLeads) all.emplace(each.part, each.lead);
        return all;
    }

    void tellReversed(std::vector<Moved>& moved) {
        for (std::size_t i = 0; i < moved.size(); ++i) {
            for (std::size_t j = i + 1; j < moved.size(); ++j) {
                const Moved a = moved[i], b = moved[j];
                if (a.part != b.part || mine_.part(a.part).kind->leads.size() != 2) continue;
                if (myNet(a.otherNet) != b.net || myNet(b.otherNet) != a.net || a.net < 0 || b.net < 0) continue;
                BenchDifference told;
                const Part& part = mine_.part(a.part);
                told.text = part.id + (standsOnTable(part) ? "'s leads are exchanged." : " is the wrong way round.");
                told.look = fmt::format("Look at {}: which way round does it belong?", part.id);
                for (const Moved& each : {a, b}) {
                    addPlace(told, {each.part, each.lead});
                    addTargetPlace(told, {each.partner, each.otherLead});
                }
                told_.push_back(std::move(told));
                moved.erase(moved.begin() + static_cast<std::ptrdiff_t>(j));
                moved.erase(moved.begin() + static_cast<std::ptrdiff_t>(i));
                --i;
                break;
            }
        }
    }

    int myNet(int targetNet) const { return targetNet < 0 ? -1 : myNetOf_[static_cast<std::size_t>(targetNet)]; }

    /// Takes out of `moved` the groups that one joint explains; several groups stay in their order.
    template <class Key, class Tell>
    void tellGroups(std::vector<Moved>& moved, Key key, Tell tell) {
        std::map<std::pair<int, int>, std::vector<Moved>> groups;
        for (const Moved& each : moved)
            if (const auto of = key(each)) groups[*of].push_back(each);
        for (const auto& [of, group] : groups) {
            if (!tell(of.first, of.second, group)) continue;
            std::erase_if(moved, [&](const Moved& each) {
                return std::ranges::any_of(
                    group, [&](const Moved& other) { return other.part == each.part && other.lead == each.lead; });
            });
        }
    }

    /// All that is on one net should be on another one too: they lack a joint.
    void tellMissingJoints(std::vector<Moved>& moved) {
        const auto key = [&](const Moved& each) -> std::optional<std::pair<int, int>> {
            const int should = myNet(each.otherNet);
            if (each.net < 0 || should < 0 || should == each.net) return std::nullopt;
            return std::pair(each.net, should);
        };
        tellGroups(moved, key, [&](int net, int should, const std::vector<Moved>& group) {
            if (countOn(net) != std::ssize(group) || group.size() < 2) return false;
            const SideLead here{group.front().part, group.front().lead};
            const auto there = companyOn(mine_, should, movedLeads(), -1);
            if (!there) return false;
            BenchDifference told;
            told.text = fmt::format("Nothing joins {} to {}.", nameAndHole(mine_, here), nameAndHole(mine_, *there));
            told.look = fmt::format("Follow the path on from {}: where does it end?", nameOf(mine_, here));
            addPlace(told, here);
            addPlace(told, *there);
            addTargetPlace(told, {group.front().partner, group.front().otherLead});
            told_.push_back(std::move(told));
            return true;
        });
    }

    /// Leads that together should be on a net of their own: a joint too many.
    void tellExtraJoints(std::vector<Moved>& moved) {
        const auto key = [&](const Moved& each) -> std::optional<std::pair<int, int>> {
            if (each.net < 0 || each.otherNet < 0 || myNet(each.otherNet) >= 0) return std::nullopt;
            return std::pair(each.net, each.otherNet);
        };
        tellGroups(moved, key, [&](int net, int, const std::vector<Moved>& group) {
            const auto rest = companyOn(mine_, net, movedLeads(), -1);
            if (!rest || group.size() < 2) return false;
            const SideLead here{group.front().part, group.front().lead};
            const std::string jumper = partingJumper(here, *rest);
            BenchDifference told;
            told.text = fmt::format("{} and {} are joined, and shouldn't be.", nameAndHole(mine_, here),
                                    nameAndHole(mine_, *rest));
            if (!jumper.empty()) {
                told.text += fmt::format(" Without {} they would be apart.", jumper);
                told.parts.push_back(jumper);
            }
            told.look = fmt::format("Look at what {} is joined to: is it too much?", nameOf(mine_, here));
            addPlace(told, here);
            addPlace(told, *rest);
            addTargetPlace(told, {group.front().partner, group.front().otherLead});
            told_.push_back(std::move(told));
            return true;
        });
    }

    /// The jumper without which two leads aren't on one net, or nothing.
    std::string partingJumper(SideLead a, SideLead b) const {
        for (std::size_t j = 0; j < mine_.bench().jumpers.size(); ++j) {
            auto less = std::make_shared<Bench>(mine_.bench());
            const std::string id = less->jumpers[j].id;
            less->jumpers.erase(less->jumpers.begin() + static_cast<std::ptrdiff_t>(j));
            std::erase_if(less->pinned, [&](const PinnedReading& reading) { return thingOf(reading.of) == id; });
            const auto layout = buildLayout(std::move(less));
            if (layout->netOfLead[static_cast<std::size_t>(layout->leadIndex(a.part, a.lead))] !=
                layout->netOfLead[static_cast<std::size_t>(layout->leadIndex(b.part, b.lead))])
                return id;
        }
        return {};
    }

    /// Terminals on a net of the bench, of parts with a partner.
    std::ptrdiff_t countOn(int net) const {
        const Terminals terminals = terminalsOf(*mine_.circuit);
        const int root = terminals.rootOfNet[static_cast<std::size_t>(net)];
        std::ptrdiff_t count = 0;
        for (int part = 0; part < std::ssize(mine_.circuit->parts); ++part) {
            if (difference_.partOf[static_cast<std::size_t>(part)] < 0) continue;
            const auto first = terminals.netOf.begin() + terminals.firstOfPart[static_cast<std::size_t>(part)];
            count += std::count(first, first + terminals.countOf(part), root);
        }
        return count;
    }

    void tellMoved(const Moved& each) {
        const SideLead at{each.part, each.lead};
        const auto stays = movedLeads();
        const auto here = companyOn(mine_, each.net, {}, each.part);
        auto there = companyOn(mine_, myNet(each.otherNet), stays, each.part);
        std::string should = "nothing";
        BenchDifference told;
        addPlace(told, at);
        if (there) {
            should = nameAndHole(mine_, *there);
            addPlace(told, *there);
        } else if (const auto partner = partnerOn(each)) {
            should = nameAndHole(mine_, *partner);
            addPlace(told, *partner);
        }
        told.text = fmt::format("{} is joined to {}; it should be joined to {}.", capitalised(nameAndHole(mine_, at)),
                                here ? nameOf(mine_, *here) : "nothing", should);
        told.look = fmt::format("Look at {}: what is it joined to?", nameOf(mine_, at));
        addTargetPlace(told, {each.partner, each.otherLead});
        told_.push_back(std::move(told));
    }

    /// The lead of the bench that does the work of one that shares the target's net.
    std::optional<SideLead> partnerOn(const Moved& each) const {
        for (int part = 0; part < std::ssize(difference_.partOf); ++part) {
            const int other = difference_.partOf[static_cast<std::size_t>(part)];
            if (other < 0 || part == each.part || difference_.leadOf.empty()) continue;
            const auto& leads = difference_.leadOf[static_cast<std::size_t>(part)];
            for (int lead = 0; lead < std::ssize(leads); ++lead) {
                const int there = leads[static_cast<std::size_t>(lead)];
                const auto& nets = target_.circuit->leads[static_cast<std::size_t>(other)];
                if (there >= 0 && each.otherNet >= 0 && nets[static_cast<std::size_t>(there)] == each.otherNet)
                    return SideLead{part, lead};
            }
        }
        return std::nullopt;
    }

    void tellSetting(const CircuitDifference::OtherSetting& setting) {
        const Part &here = mine_.part(setting.part), &there = target_.part(setting.partner);
        const auto index = static_cast<std::size_t>(setting.index);
        const ValueSpec& spec = setting.state ? here.kind->state[index] : here.kind->values[index];
        const auto valueOf = [&](const Part& part) {
            return describeSetting(spec, setting.state ? part.stateValue(setting.index) : part.value(setting.index));
        };
        BenchDifference told;
        const bool sought = spec.sought || spec.type == ValueType::Choice;
        told.text = sought ? fmt::format("{} is {} and should be {}.", here.id, valueOf(here), valueOf(there))
                           : fmt::format("{} of {} is {} and should be {}.", capitalised(uncapitalised(spec.label)),
                                         here.id, valueOf(here), valueOf(there));
        told.look = fmt::format("Look at {}: is its {} as it was asked for?", here.id, uncapitalised(spec.label));
        addWhole(mine_, setting.part, told.parts, told.holes);
        addWhole(target_, setting.partner, told.targetParts, told.targetHoles);
        told_.push_back(std::move(told));
    }

    static void addWhole(const ComparedSide& side, int part, std::vector<std::string>& ids, std::vector<Hole>& holes) {
        addId(ids, side.part(part).id);
        if (!side.hasPlaces) return;
        for (const auto& hole : side.part(part).leads)
            if (hole) holes.push_back(*hole);
    }

    void tellExtra(int part) {
        BenchDifference told;
        told.text = fmt::format("{} is too many: the target has no such part left.", describePart(mine_.part(part)));
        told.look = fmt::format("Look at {}: is it needed?", mine_.part(part).id);
        addWhole(mine_, part, told.parts, told.holes);
        told_.push_back(std::move(told));
    }

    void tellMissing(int part) {
        BenchDifference told;
        told.text = fmt::format("A part is missing: {} ({} on the target).", describeKind(target_.part(part)),
                                target_.part(part).id);
        told.look = "Count your parts: are all of them there, and joined in?";
        addWhole(target_, part, told.targetParts, told.targetHoles);
        told_.push_back(std::move(told));
    }

    const ComparedSide& mine_;
    const ComparedSide& target_;
    const CircuitDifference& difference_;
    std::vector<int> myNetOf_;  ///< by net of the target: the bench's
    std::vector<BenchDifference> told_;
};

}  // namespace

Likeness likenessFor(const ComparisonBounds& bounds) {
    Likeness likeness;
    likeness.values = ValuesCounted::Electrical;
    likeness.tolerance = bounds.tolerance;
    likeness.states = false;
    likeness.unusedParts = false;
    likeness.seriesOrder = false;
    likeness.effort = 20'000'000;
    return likeness;
}

std::vector<BenchDifference> accountOf(const ComparedSide& mine, const ComparedSide& target,
                                       const CircuitDifference& difference) {
    std::vector<BenchDifference> told = AccountWriter(mine, target, difference).run();
    if (told.empty()) return told;
    std::vector<BenchDifference> oneSlip = slipAccount(mine, target, difference, told);
    return oneSlip.empty() ? told : oneSlip;
}

std::vector<BenchDifference> switchedOtherwise(const ComparedSide& mine, const ComparedSide& target,
                                               const std::vector<int>& partOf) {
    std::vector<BenchDifference> told;
    for (std::size_t p = 0; p < partOf.size(); ++p) {
        const Part& here = mine.part(static_cast<int>(p));
        if (partOf[p] < 0 || !here.kind->isSupply) continue;
        const Part& there = target.part(partOf[p]);
        for (int state = 0; state < std::ssize(here.kind->state); ++state) {
            if (here.stateValue(state) == there.stateValue(state)) continue;
            BenchDifference each;
            each.text =
                fmt::format("{} is switched {} and should be {}.", here.id, here.stateValue(state) != 0 ? "on" : "off",
                            there.stateValue(state) != 0 ? "on" : "off");
            each.look = fmt::format("Look at {}'s own switch.", here.id);
            each.parts = {here.id};
            each.targetParts = {there.id};
            told.push_back(std::move(each));
        }
    }
    return told;
}

}  // namespace tiepoint
