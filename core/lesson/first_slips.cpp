#include "core/lesson/first_slips.h"

#include "core/edit/holes.h"
#include "core/edit/placement.h"

#include <fmt/format.h>

#include <array>
#include <cstdlib>
#include <utility>

namespace tiepoint {
namespace {

using MaybeSlip = std::optional<FirstSlip>;

constexpr double kEnoughVolt = 3;
constexpr int kFewHoles = 3;

std::string holesInWords(int count) {
    constexpr std::array kNumbers{"no", "one", "two", "three", "four", "five"};
    const std::string number =
        count < static_cast<int>(kNumbers.size()) ? kNumbers[static_cast<std::size_t>(count)] : std::to_string(count);
    return number + (count == 1 ? " hole" : " holes");
}

/// Looks at one bench for each slip in turn, the gravest first.
class SlipFinder {
public:
    SlipFinder(const Snapshot& snapshot, const FirstChain& chain)
        : layout_(*snapshot.layout),
          bench_(*layout_.bench),
          chain_(chain) {}

    MaybeSlip find() const {
        if (chain_.step == 4) return std::nullopt;
        for (const auto look : {&SlipFinder::ledOnSupply, &SlipFinder::sideBySide, &SlipFinder::inOnePiece,
                                &SlipFinder::apart, &SlipFinder::wrongWay, &SlipFinder::supplyUnplugged,
                                &SlipFinder::jumperAside, &SlipFinder::closedAndDark}) {
            if (MaybeSlip slip = (this->*look)()) return slip;
        }
        return std::nullopt;
    }

private:
    int net(int part, int lead) const { return layout_.netOfLead[layout_.leadIndex(part, lead)]; }
    int plus() const { return chain_.supply < 0 ? -1 : net(chain_.supply, 0); }
    int minus() const { return chain_.supply < 0 ? -1 : net(chain_.supply, 1); }
    const Part& part(int index) const { return bench_.parts[index]; }
    const std::string& led() const { return part(chain_.led).id; }
    const std::string& resistor() const { return part(chain_.resistor).id; }

    /// Straight between plus and minus: the one slip that harms the LED.
    MaybeSlip ledOnSupply() const {
        if (chain_.led < 0 || chain_.supply < 0) return std::nullopt;
        const int anode = net(chain_.led, 0), cathode = net(chain_.led, 1);
        if (!(anode == plus() && cathode == minus()) && !(anode == minus() && cathode == plus())) return std::nullopt;
        return FirstSlip{"Stop: nothing holds the current back.",
                         fmt::format("{} lies straight between plus and minus. Without a resistor far too much current "
                                     "runs through an LED.",
                                     led()),
                         "Flip the supply's lever down, then take one jumper out",
                         {}};
    }

    MaybeSlip sideBySide() const {
        if (chain_.step != 1 || chain_.led < 0) return std::nullopt;
        const auto joined = [&](int r, int d) { return net(chain_.resistor, r) == net(chain_.led, d); };
        const bool alike = joined(0, 0) && joined(1, 1);
        if (!alike && !(joined(0, 1) && joined(1, 0))) return std::nullopt;
        for (const int r : {0, 1}) {
            const int d = alike ? r : 1 - r, outer = net(chain_.resistor, r);
            const bool touching = sameStrip(bench_, *part(chain_.resistor).leads[r], *part(chain_.led).leads[d]);
            if (!touching && (outer == plus() || outer == minus())) return bothLeadTo(outer == plus());
        }
        return FirstSlip{"They lie side by side.",
                         fmt::format("Both ends of {} and {} meet, so current can go through one and miss the other. "
                                     "They belong one after the other.",
                                     resistor(), led()),
                         fmt::format("Move one leg of {} to an empty column", led()),
                         {}};
    }

    static FirstSlip bothLeadTo(bool isPlus) {
        return {fmt::format("Both ends lead to {}.", isPlus ? "plus" : "minus"),
                "Current flows only from plus to minus. Between two ends that are the same nothing drives it.",
                fmt::format("Move one of the jumpers to a {} rail", isPlus ? "minus" : "plus"),
                {}};
    }

    /// Both legs of the part that was put in last are one piece of metal.
    MaybeSlip inOnePiece() const {
        const int it = chain_.step == 0 ? chain_.resistor : chain_.step == 1 ? chain_.led : -1;
        if (it < 0 || !part(it).leads[0] || !part(it).leads[1] || net(it, 0) != net(it, 1)) return std::nullopt;
        const Hole& at = *part(it).leads[0];
        if (!sameStrip(bench_, at, *part(it).leads[1])) return std::nullopt;  // a jumper joins them, as is seen
        const std::string where = isRail(at.line) ? "one rail" : fmt::format("column {}", at.number);
        return FirstSlip{fmt::format("Both legs of {} are in {}.", part(it).id, where),
                         fmt::format("The holes of {} are one piece of metal, so current has no need to go through {}.",
                                     isRail(at.line) ? "a rail" : "a column on one side of the gap", part(it).id),
                         fmt::format("Move one leg of {} to another column", part(it).id),
                         {}};
    }

    /// The LED is in, but no leg of it meets the resistor.
    MaybeSlip apart() const {
        if (chain_.step != 1 || chain_.led < 0) return std::nullopt;
        struct Gap {
            int resistorLead = 0, ledLead = 0, columns = 0;
            bool across = false;
        };
        std::optional<Gap> nearest;
        for (const int d : {0, 1}) {
            for (const int r : {0, 1}) {
                const auto& from = part(chain_.led).leads[d];
                const auto& to = part(chain_.resistor).leads[r];
                if (!from || !to || isRail(from->line) || isRail(to->line) || from->board != to->board) continue;
                const Gap gap{r, d, from->number - to->number, (from->line <= Line::E) != (to->line <= Line::E)};
                if (!nearest || std::abs(gap.columns) < std::abs(nearest->columns)) nearest = gap;
            }
        }
        if (!nearest) return std::nullopt;
        const Hole& is = *part(chain_.led).leads[nearest->ledLead];
        const Hole& belongs = *part(chain_.resistor).leads[nearest->resistorLead];
        const char* leg = nearest->ledLead == 0 ? "longer" : "shorter";
        const std::vector<Hole> holes = freeIn(belongs);
        if (nearest->across) return acrossTheGap(is, belongs, leg, holes);
        const int off = std::abs(nearest->columns);
        const char* const side = nearest->columns > 0 ? "right" : "left";
        const char* const back = nearest->columns > 0 ? "left" : "right";
        FirstSlip slip{
            off <= kFewHoles ? fmt::format("Nearly. It sits {} too far {}.", holesInWords(off), side)
                             : "They don't touch yet.",
            fmt::format("{} ends in column {}. The LED's {} leg is in column {}. The five holes of a column are one "
                        "piece of metal, and the next column is another piece. So the two don't touch.",
                        resistor(), belongs.number, leg, is.number),
            fmt::format("Put the LED's {} leg into column {}", leg, belongs.number), holes};
        const auto moved = shifted(bench_, part(chain_.led), -nearest->columns, 0);
        if (off <= kFewHoles && moved && !refusal(bench_, *moved)) {
            slip.action = fmt::format("Slide the LED {} {}: {} to {}, or select it and press {}{}", holesInWords(off),
                                      back, is.number, belongs.number, nearest->columns > 0 ? "←" : "→",
                                      off > 1 ? fmt::format(" {} times", off) : "");
        }
        return slip;
    }

    FirstSlip acrossTheGap(const Hole& is, const Hole& belongs, const char* leg, std::vector<Hole> holes) const {
        return {"Nearly. The gap lies between them.",
                fmt::format("{} ends in {}, the LED's {} leg is in {}. Rows a to e and rows f to j are apart: no metal "
                            "crosses the gap.",
                            resistor(), holeName(bench_, belongs), leg, holeName(bench_, is)),
                fmt::format("Move the LED, so that its {} leg is in column {} on the other side", leg, belongs.number),
                std::move(holes)};
    }

    /// Plus or minus has come to the end where the other one belongs.
    MaybeSlip wrongWay() const {
        if (chain_.step < 2 || chain_.supply < 0) return std::nullopt;
        const bool plusWrong = chain_.minusEnd == plus(), minusWrong = chain_.plusEnd == minus();
        if (!plusWrong && !minusWrong) return std::nullopt;
        return FirstSlip{"Nearly. The LED is the wrong way round.",
                         fmt::format("{} comes to the side of its {} leg, and that way it blocks. Current can only go "
                                     "in at the longer leg and out at the shorter one.",
                                     plusWrong ? "Plus" : "Minus", plusWrong ? "shorter" : "longer"),
                         exchangeWords(part(chain_.led)),
                         {}};
    }

    /// The fewest presses of keys that bring each leg of a part to where the other one is; tried before they are told.
    std::string exchangeWords(const Part& it) const {
        constexpr int kMostPresses = 3;
        struct Way {
            Part part;
            std::string keys;
        };
        std::vector<Way> ways{{it, ""}};
        for (int presses = 0; presses < kMostPresses; ++presses) {
            std::vector<Way> longer;
            for (const Way& way : ways) {
                const auto add = [&](const std::optional<Part>& now, const char* key) {
                    if (now && !refusal(bench_, *now)) longer.push_back({*now, way.keys + " " + key});
                };
                add(turnedRound(bench_, way.part, 1).part, "]");
                add(shifted(bench_, way.part, -1, 0), "←");
                add(shifted(bench_, way.part, 1, 0), "→");
            }
            for (const Way& way : longer) {
                if (!way.part.leads[0] || !way.part.leads[1]) continue;
                if (sameStrip(bench_, *way.part.leads[0], *it.leads[1]) &&
                    sameStrip(bench_, *way.part.leads[1], *it.leads[0]))
                    return "Select the LED and press" + way.keys;
            }
            ways = std::move(longer);
        }
        return "Pull the LED out and push it in the other way round";
    }

    MaybeSlip supplyUnplugged() const {
        if (chain_.step < 2 || chain_.supply < 0) return std::nullopt;
        for (const int lead : {0, 1}) {
            if (part(chain_.supply).leads[lead] || part(chain_.supply).kind->leads[lead].socket) continue;
            return FirstSlip{fmt::format("The supply's {} lead isn't plugged in.", lead == 0 ? "red" : "black"),
                             "Without both of its leads in the board the supply can drive nothing.",
                             fmt::format("Drag the end of that lead into a {} rail", lead == 0 ? "plus" : "minus"),
                             {}};
        }
        return std::nullopt;
    }

    /// A jumper that was meant to bring plus or minus and leads to metal where nothing else is.
    MaybeSlip jumperAside() const {
        if (chain_.step != 2 && chain_.step != 3) return std::nullopt;
        const bool bringsPlus = chain_.step == 2;
        const int end = bringsPlus ? chain_.plusEnd : chain_.minusEnd, source = bringsPlus ? plus() : minus();
        if (end == source || source < 0) return std::nullopt;
        const auto wanted = part(chain_.supply).leads[bringsPlus ? 0 : 1];
        const int legOf = (bringsPlus == chain_.anodeInside) ? chain_.resistor : chain_.led;
        const Hole leg = *part(legOf).leads[legOf == chain_.led ? chain_.ledLead : chain_.resistorLead];
        for (std::size_t j = 0; j < bench_.jumpers.size(); ++j) {
            for (const int side : {0, 1}) {
                const Joint& here = layout_.joints[layout_.jumperJoints[j][side]];
                const Joint& there = layout_.joints[layout_.jumperJoints[j][1 - side]];
                if (there.hole < 0 || !isDeadEnd(there)) continue;
                const Hole ends = layout_.holeAt(there.hole);
                if (here.net == end && isRail(ends.line) && wanted)
                    return unfedRail(bench_.jumpers[j].id, ends, *wanted, bringsPlus);
                if (here.net == source && !isRail(ends.line))
                    return besideTheLeg(bench_.jumpers[j].id, ends, legOf, leg);
            }
        }
        return std::nullopt;
    }

    FirstSlip unfedRail(const std::string& jumper, const Hole& ends, const Hole& wanted, bool isPlus) const {
        return {
            "Nearly. Nothing feeds that rail.",
            fmt::format("{} ends in the rail {}, and nothing else is in it. The supply's {} lead is in the rail {}.",
                        jumper, lineName(ends.line), isPlus ? "red" : "black", lineName(wanted.line)),
            fmt::format("Move that end of {} to the rail {}", jumper, lineName(wanted.line)), freeIn(wanted)};
    }

    FirstSlip besideTheLeg(const std::string& jumper, const Hole& ends, int legOf, const Hole& leg) const {
        return {"Nearly. It ends beside the leg.",
                fmt::format("{} ends in column {}. The leg of {} is in column {}, which is another piece of metal.",
                            jumper, ends.number, part(legOf).id, leg.number),
                fmt::format("Move that end of {}: {} to {}", jumper, holeName(bench_, ends), columnOf(leg)),
                freeIn(leg)};
    }

    std::string columnOf(const Hole& hole) const {
        return fmt::format("column {}, rows {}", hole.number, hole.line <= Line::E ? "a to e" : "f to j");
    }

    bool isDeadEnd(const Joint& joint) const {
        int plugged = 0;
        for (const Joint& other : layout_.joints)
            plugged += other.hole >= 0 && layout_.stripOfHole[other.hole] == layout_.stripOfHole[joint.hole];
        return plugged == 1;
    }

    /// The loop is closed the right way round, and there is no light.
    MaybeSlip closedAndDark() const {
        if (chain_.step != 3 || chain_.reversed || chain_.minusEnd != minus()) return std::nullopt;
        const Part& supply = part(chain_.supply);
        const int on = supply.kind->stateIndex("on");
        if (on >= 0 && supply.stateValue(on) == 0) {
            return FirstSlip{"All is joined. Now switch it on.",
                             "The loop is closed, but the supply is off, so nothing drives a current round it.",
                             fmt::format("Flip the lever of {} up", supply.id),
                             {}};
        }
        if (plus() == minus()) {
            return FirstSlip{"Plus and minus touch.",
                             "A jumper joins plus and minus directly. All current takes that way, and none the LED's.",
                             "Take that jumper out",
                             {}};
        }
        const int volt = supply.kind->valueIndex("voltage");
        if (volt >= 0 && supply.value(volt) < kEnoughVolt) {
            return FirstSlip{"The loop is closed, but the push is weak.",
                             "An LED needs about two volts for itself, and the resistor needs its share too.",
                             fmt::format("Set {} to 5 V", supply.id),
                             {}};
        }
        return FirstSlip{"The loop is closed, but hardly any current flows.",
                         fmt::format("{} holds back too much, so the LED stays dark or dim.", resistor()),
                         fmt::format("Select {} and type 330", resistor()),
                         {}};
    }

    std::vector<Hole> freeIn(const Hole& hole) const {
        const auto free = nearestFreeInStrip(bench_, hole);
        return free ? std::vector<Hole>{*free} : std::vector<Hole>{};
    }

    const Layout& layout_;
    const Bench& bench_;
    const FirstChain& chain_;
};

}  // namespace

std::optional<FirstSlip> firstSlip(const Snapshot& snapshot, const FirstChain& chain) {
    return SlipFinder(snapshot, chain).find();
}

}  // namespace tiepoint
