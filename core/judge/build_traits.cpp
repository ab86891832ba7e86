#include "core/judge/build_traits.h"

#include "core/behaviour/supply_nets.h"
#include "core/bench/resolve.h"
#include "core/meter/meter.h"
#include "core/parts/sides.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

namespace tiepoint {
namespace {

constexpr double kSameValue = 1e-6;  // relative, and in volts

class BuildObserver {
public:
    BuildObserver(const Layout& layout, Traits& traits, std::vector<int>& idle)
        : layout_(layout),
          bench_(*layout.bench),
          traits_(traits),
          idle_(idle) {
        countNets();
    }

    void observe() {
        structure();
        jumpers();
        print();
        sharing();
        values();
    }

private:
    const PartKind& kind(int part) const { return *bench_.parts[part].kind; }
    int partCount() const { return static_cast<int>(bench_.parts.size()); }
    int netOf(int part, int lead) const { return layout_.netOfLead[layout_.leadIndex(part, lead)]; }
    bool isAlone(int part, int lead) const { return meeting_[netOf(part, lead)] <= 1; }

    void countNets() {
        meeting_.assign(static_cast<std::size_t>(layout_.netCount), 0);
        for (int part = 0; part < partCount(); ++part) {
            if (looksOn(bench_.parts[part])) continue;
            std::set<int> nets;
            for (int lead = 0; lead < static_cast<int>(kind(part).leads.size()); ++lead) nets.insert(netOf(part, lead));
            for (const int net : nets) ++meeting_[net];
        }
    }

    void structure() {
        for (int part = 0; part < partCount(); ++part) {
            if (isMeter(kind(part)) && liesUnplugged(bench_.parts[part])) continue;
            if (isMeter(kind(part)) && looksOn(bench_.parts[part])) {
                for (int lead = 0; lead < static_cast<int>(kind(part).leads.size()); ++lead)
                    traits_[Trait::LooseLegs] += meeting_[netOf(part, lead)] == 0;
                continue;
            }
            const std::vector<int> sides = sidesOf(kind(part));
            std::set<int> nets;
            std::size_t alone = 0;
            for (const int side : sides) {
                nets.insert(netOf(part, side));
                alone += isAlone(part, side);
            }
            if (sides.size() >= kSidesNeeded && nets.size() == 1) {
                traits_[meeting_[*nets.begin()] > 1 ? Trait::Bypassed : Trait::Parked] += 1;
                idle_.push_back(part);
            } else if (alone == sides.size()) {
                traits_[Trait::Parked] += 1;
            } else if (sides.size() - alone < kSidesNeeded) {
                traits_[Trait::LooseLegs] += static_cast<double>(kSidesNeeded - (sides.size() - alone));
            }
        }
    }

    void jumpers() {
        std::vector<int> plugged(layout_.netOfStrip.size(), 0);
        for (const Joint& joint : layout_.joints)
            if (joint.hole >= 0) ++plugged[layout_.stripOfHole[joint.hole]];
        // Metal by strips; a jumper between what is joined already is idle.
        std::map<int, int> rootOf;
        const auto root = [&](int strip) {
            while (rootOf.contains(strip)) strip = rootOf[strip];
            return strip;
        };
        for (const Jumper& jumper : bench_.jumpers) {
            int strips[2] = {-1, -1};
            bool rails = true, loose = false;
            for (int end = 0; end < 2; ++end) {
                const Hole* hole = std::get_if<Hole>(&jumper.ends[static_cast<std::size_t>(end)]);
                if (hole == nullptr) {
                    const auto& socket = std::get<Socket>(jumper.ends[static_cast<std::size_t>(end)]);
                    strips[end] = static_cast<int>(layout_.netOfStrip.size()) +
                                  layout_.leadIndex(bench_.partIndex(socket.part), socket.lead);
                    rails = false;
                    continue;
                }
                strips[end] = layout_.stripOfHole[layout_.holeIndex(*hole)];
                rails = rails && isRail(hole->line);
                loose = loose || (plugged[strips[end]] == 1 && !isRail(hole->line));
            }
            traits_[Trait::LooseEnds] += loose;
            traits_[Trait::RailTies] += rails && strips[0] != strips[1];
            const int a = root(strips[0]), b = root(strips[1]);
            if (a == b)
                traits_[Trait::IdleJumpers] += 1;
            else
                rootOf[a] = b;
        }
    }

    void print() {
        std::set<int> plus, minus;
        for (const SupplyNets& each : supplyNets(layout_)) {
            plus.insert(each.plus);
            minus.insert(each.minus);
        }
        std::set<int> wrong;
        for (const Joint& joint : layout_.joints) {
            if (joint.hole < 0) continue;
            const Hole hole = layout_.holeAt(joint.hole);
            if (!isRail(hole.line)) continue;
            const int net = layout_.netOfHole(joint.hole);
            const bool printedPlus = hole.line == Line::TopPlus || hole.line == Line::BottomPlus;
            const auto &right = printedPlus ? plus : minus, &contrary = printedPlus ? minus : plus;
            if (contrary.contains(net) && !right.contains(net)) wrong.insert(layout_.stripOfHole[joint.hole]);
        }
        traits_[Trait::Misprinted] = static_cast<double>(wrong.size());
        static const int red = findJumperColour("red"), black = findJumperColour("black");
        for (std::size_t j = 0; j < bench_.jumpers.size(); ++j) {
            const int net = layout_.joints[layout_.jumperJoints[j][0]].net;
            const bool inPlus = plus.contains(net), inMinus = minus.contains(net);
            if (inPlus != inMinus) traits_[Trait::Colours] += bench_.jumpers[j].colour == (inPlus ? black : red);
        }
    }

    void sharing() {
        std::map<std::pair<int, int>, int> between;
        for (int part = 0; part < partCount(); ++part) {
            if (!kind(part).needsResistor || kind(part).leads.size() != 2) continue;
            const int a = netOf(part, 0), b = netOf(part, 1);
            if (a != b && meeting_[a] > 1 && meeting_[b] > 1 && ++between[{a, b}] > 1) traits_[Trait::Sharing] += 1;
        }
    }

    void values() {
        std::set<double> different;
        for (const Part& part : bench_.parts) {
            if (part.kind->isSupply) {
                const int volts = part.kind->valueIndex("voltage");
                if (volts >= 0 && part.kind->values[volts].sought) {
                    constexpr double kUsual[] = {3.3, 5, 6, 9, 12};
                    const double volt = part.value(volts);
                    traits_[Trait::UsualVolts] +=
                        std::ranges::any_of(kUsual, [&](double each) { return std::abs(each - volt) < kSameValue; });
                }
                continue;
            }
            const int index = resistanceValue(*part.kind);
            if (index < 0) continue;
            const double ohm = part.value(index);
            different.insert(ohm);
            // Common practice: what every kit for beginners has.
            constexpr double kKit[] = {100, 150, 220, 330, 470, 680, 1e3, 2.2e3, 4.7e3, 10e3, 22e3, 47e3, 100e3};
            traits_[Trait::UsualValues] +=
                std::ranges::any_of(kKit, [&](double each) { return std::abs(each / ohm - 1) < kSameValue; });
        }
        traits_[Trait::OddValues] = static_cast<double>(different.size());
    }

    const Layout& layout_;
    const Bench& bench_;
    Traits& traits_;
    std::vector<int>& idle_;
    std::vector<int> meeting_;  ///< by net: parts that meet there
};

}  // namespace

bool liesUnplugged(const Part& instrument) {
    return std::ranges::none_of(instrument.leads, [](const auto& lead) { return lead.has_value(); });
}

void observeBuild(const Layout& layout, Traits& traits, std::vector<int>& idle) {
    BuildObserver(layout, traits, idle).observe();
}

}  // namespace tiepoint
