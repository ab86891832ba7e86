#include "core/lesson/first_slips.h"

#include "core/edit/holes.h"
#include "core/edit/placement.h"
#include "core/words/words.h"

#include <cstdlib>
#include <utility>

namespace tiepoint {
namespace {

using MaybeSlip = std::optional<FirstSlip>;

constexpr double kEnoughVolt = 3;
constexpr int kFewHoles = 3;

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
                                &SlipFinder::comesBetween, &SlipFinder::jumperAside, &SlipFinder::closedAndDark}) {
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
        return FirstSlip{say("lesson.onSupply.title"),
                         say("lesson.onSupply.why", {{"ledId", led()}}),
                         say("lesson.onSupply.do"),
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
        return FirstSlip{say("lesson.sideBySide.title"),
                         say("lesson.sideBySide.why", {{"resistorId", resistor()}, {"ledId", led()}}),
                         say("lesson.sideBySide.do", {{"ledId", led()}}),
                         {}};
    }

    static FirstSlip bothLeadTo(bool isPlus) {
        return {say(isPlus ? "lesson.bothToPlus.title" : "lesson.bothToMinus.title"),
                say("lesson.bothAlike.why"),
                say(isPlus ? "lesson.bothToPlus.do" : "lesson.bothToMinus.do"),
                {}};
    }

    /// Both legs of the part that was put in last are one piece of metal.
    MaybeSlip inOnePiece() const {
        const int it = chain_.step == 0 ? chain_.resistor : chain_.step == 1 ? chain_.led : -1;
        if (it < 0 || !part(it).leads[0] || !part(it).leads[1] || net(it, 0) != net(it, 1)) return std::nullopt;
        const Hole& at = *part(it).leads[0];
        if (!sameStrip(bench_, at, *part(it).leads[1])) return std::nullopt;  // a jumper joins them, as is seen
        const std::string& id = part(it).id;
        const std::string action = say("lesson.inOne.do", {{"part", id}});
        if (isRail(at.line))
            return FirstSlip{
                say("lesson.inOneRail.title", {{"part", id}}), say("lesson.inOneRail.why", {{"part", id}}), action, {}};
        return FirstSlip{say("lesson.inOneColumn.title", {{"part", id}, {"column", at.number}}),
                         say("lesson.inOneColumn.why", {{"part", id}}),
                         action,
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
        const std::string leg = say(nearest->ledLead == 0 ? "lesson.leg.longer" : "lesson.leg.shorter");
        const std::vector<Hole> holes = freeIn(belongs);
        if (nearest->across) return acrossTheGap(is, belongs, leg, holes);
        const int off = std::abs(nearest->columns);
        const bool isFew = off <= kFewHoles, isRight = nearest->columns > 0;
        const std::string few = say("count.holes", {{"count", off}});
        FirstSlip slip{isFew ? say(isRight ? "lesson.apart.tooFarRight" : "lesson.apart.tooFarLeft", {{"holes", few}})
                             : say("lesson.apart.title"),
                       say("lesson.apart.why",
                           {{"resistorId", resistor()}, {"there", belongs.number}, {"leg", leg}, {"here", is.number}}),
                       say("lesson.apart.do", {{"leg", leg}, {"there", belongs.number}}), holes};
        const auto moved = shifted(bench_, part(chain_.led), -nearest->columns, 0);
        if (isFew && moved && !refusal(bench_, *moved))
            slip.action = say(isRight ? "lesson.apart.slideLeft" : "lesson.apart.slideRight",
                              {{"holes", few}, {"here", is.number}, {"there", belongs.number}, {"times", off}});
        return slip;
    }

    FirstSlip acrossTheGap(const Hole& is, const Hole& belongs, const std::string& leg, std::vector<Hole> holes) const {
        return {say("lesson.gap.title"),
                say("lesson.gap.why", {{"resistorId", resistor()},
                                       {"there", holeName(bench_, belongs)},
                                       {"leg", leg},
                                       {"here", holeName(bench_, is)}}),
                say("lesson.gap.do", {{"leg", leg}, {"column", belongs.number}}), std::move(holes)};
    }

    /// Plus or minus has come to the end where the other one belongs.
    MaybeSlip wrongWay() const {
        if (chain_.step < 2 || chain_.supply < 0) return std::nullopt;
        const bool plusWrong = chain_.minusEnd == plus(), minusWrong = chain_.plusEnd == minus();
        if (!plusWrong && !minusWrong) return std::nullopt;
        return FirstSlip{say("lesson.wrongWay.title"),
                         say(plusWrong ? "lesson.wrongWay.plus" : "lesson.wrongWay.minus"),
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
                    if (now && !refusal(bench_, *now))
                        longer.push_back({*now, way.keys + (way.keys.empty() ? "" : " ") + key});
                };
                add(turnedRound(bench_, way.part, 1).part, "]");
                add(shifted(bench_, way.part, -1, 0), "←");
                add(shifted(bench_, way.part, 1, 0), "→");
            }
            for (const Way& way : longer) {
                if (!way.part.leads[0] || !way.part.leads[1]) continue;
                if (sameStrip(bench_, *way.part.leads[0], *it.leads[1]) &&
                    sameStrip(bench_, *way.part.leads[1], *it.leads[0]))
                    return say("lesson.wrongWay.keys", {{"keys", way.keys}});
            }
            ways = std::move(longer);
        }
        return say("lesson.wrongWay.byHand");
    }

    MaybeSlip supplyUnplugged() const {
        if (chain_.step < 2 || chain_.supply < 0) return std::nullopt;
        for (const int lead : {0, 1}) {
            if (part(chain_.supply).leads[lead] || part(chain_.supply).kind->leads[lead].socket) continue;
            return FirstSlip{say(lead == 0 ? "lesson.unplugged.red" : "lesson.unplugged.black"),
                             say("lesson.unplugged.why"),
                             say(lead == 0 ? "lesson.unplugged.redDo" : "lesson.unplugged.blackDo"),
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

    /// A jumper brings plus or minus to where the two parts meet: past the resistor, or past the LED.
    MaybeSlip comesBetween() const {
        if (chain_.step != 2 || chain_.supply < 0) return std::nullopt;
        const int inner = net(chain_.resistor, 1 - chain_.resistorLead);
        if (inner != plus() && inner != minus()) return std::nullopt;
        const int legOf = ((inner == plus()) == chain_.anodeInside) ? chain_.resistor : chain_.led;
        const Hole leg = *part(legOf).leads[legOf == chain_.led ? chain_.ledLead : chain_.resistorLead];
        const int strip = layout_.stripOfHole[static_cast<std::size_t>(
            layout_.holeIndex(*part(chain_.resistor).leads[1 - chain_.resistorLead]))];
        for (std::size_t j = 0; j < bench_.jumpers.size(); ++j) {
            for (const int side : {0, 1}) {
                const int hole = layout_.joints[layout_.jumperJoints[j][side]].hole;
                if (hole < 0 || layout_.stripOfHole[hole] != strip) continue;
                const Hole ends = layout_.holeAt(hole);
                return FirstSlip{say("lesson.between.title"),
                                 say("lesson.between.why", {{"jumper", bench_.jumpers[j].id},
                                                            {"here", ends.number},
                                                            {"resistorId", resistor()},
                                                            {"ledId", led()}}),
                                 moveEnd(bench_.jumpers[j].id, ends, leg), freeIn(leg)};
            }
        }
        return std::nullopt;
    }

    std::string moveEnd(const std::string& jumper, const Hole& ends, const Hole& leg) const {
        return say(leg.line <= Line::E ? "lesson.beside.doUpper" : "lesson.beside.doLower",
                   {{"jumper", jumper}, {"from", holeName(bench_, ends)}, {"column", leg.number}});
    }

    FirstSlip unfedRail(const std::string& jumper, const Hole& ends, const Hole& wanted, bool isPlus) const {
        const std::string_view here = lineName(ends.line), there = lineName(wanted.line);
        return {say("lesson.unfed.title"),
                say(isPlus ? "lesson.unfed.plus" : "lesson.unfed.minus",
                    {{"jumper", jumper}, {"here", here}, {"there", there}}),
                say("lesson.unfed.do", {{"jumper", jumper}, {"there", there}}), freeIn(wanted)};
    }

    FirstSlip besideTheLeg(const std::string& jumper, const Hole& ends, int legOf, const Hole& leg) const {
        return {say("lesson.beside.title"),
                say("lesson.beside.why",
                    {{"jumper", jumper}, {"here", ends.number}, {"part", part(legOf).id}, {"there", leg.number}}),
                moveEnd(jumper, ends, leg), freeIn(leg)};
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
            return FirstSlip{
                say("lesson.off.title"), say("lesson.off.why"), say("lesson.off.do", {{"supply", supply.id}}), {}};
        }
        if (plus() == minus())
            return FirstSlip{say("lesson.touch.title"), say("lesson.touch.why"), say("lesson.touch.do"), {}};
        const int volt = supply.kind->valueIndex("voltage");
        if (volt >= 0 && supply.value(volt) < kEnoughVolt) {
            return FirstSlip{
                say("lesson.weak.title"), say("lesson.weak.why"), say("lesson.weak.do", {{"supply", supply.id}}), {}};
        }
        return FirstSlip{say("lesson.hardly.title"),
                         say("lesson.hardly.why", {{"resistorId", resistor()}}),
                         say("lesson.hardly.do", {{"resistorId", resistor()}}),
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
