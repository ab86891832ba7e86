#include "core/lesson/first_slips.h"

#include "core/edit/holes.h"
#include "core/edit/placement.h"
#include "core/lesson/first_faults.h"
#include "core/words/words.h"

#include <cstdlib>
#include <utility>

namespace tiepoint {
namespace {

using MaybeSlip = std::optional<FirstSlip>;

constexpr int kFewHoles = 3;

/// Looks at one bench for each slip in turn, the gravest first.
class SlipFinder {
public:
    SlipFinder(const Snapshot& snapshot, const FirstChain& chain)
        : layout_(*snapshot.layout),
          bench_(*layout_.bench),
          chain_(chain),
          mends_(layout_) {}

    MaybeSlip find() const {
        if (chain_.step == 4) return std::nullopt;
        for (const auto look :
             {&SlipFinder::shortsSupply, &SlipFinder::ledOnSupply, &SlipFinder::sideBySide, &SlipFinder::inOnePiece,
              &SlipFinder::bridged, &SlipFinder::apart, &SlipFinder::wrongWay, &SlipFinder::supplyUnplugged,
              &SlipFinder::comesBetween, &SlipFinder::jumperAside, &SlipFinder::closedAndDark}) {
            if (MaybeSlip slip = (this->*look)()) {
                if (slip->holes.empty() && slip->mend) lightTheWay(*slip);
                return slip;
            }
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
        const auto isSaved = [&](const Layout& without) {
            const int d = without.bench->partIndex(led()), supply = without.bench->partIndex(part(chain_.supply).id);
            const auto joined = [&](int lead, int pole) {
                return without.netOfLead[without.leadIndex(d, lead)] ==
                       without.netOfLead[without.leadIndex(supply, pole)];
            };
            return d < 0 || (!(joined(0, 0) && joined(1, 1)) && !(joined(0, 1) && joined(1, 0)));
        };
        MaybeMend mend = mends_.without(isSaved, switchedOn() ? &part(chain_.supply) : nullptr);
        FirstSlip slip{say("lesson.onSupply.title"), say("lesson.onSupply.why", {{"ledId", led()}}), "", {}};
        const std::string thing = mend ? std::get<Remove>(mend->edit.operations.back()).id : led();
        slip.action = say(switchedOn() ? "lesson.onSupply.do" : "lesson.onSupply.doOff", {{"thing", thing}});
        slip.mend = std::move(mend);
        return slip;
    }

    void lightTheWay(FirstSlip& slip) const {
        const auto& to = slip.mend->belongs;
        if (to && !occupantOf(bench_, *to)) slip.holes = {*to};
    }

    bool switchedOn() const {
        const Part& supply = part(chain_.supply);
        const int on = supply.kind->stateIndex("on");
        return on >= 0 && supply.stateValue(on) != 0;
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
                         {},
                         mends_.oneLegElsewhere(part(chain_.led)),
                         say("lesson.seen.sideBySide"),
                         say("lesson.seen.inARow")};
    }

    FirstSlip bothLeadTo(bool isPlus) const {
        FirstSlip slip{say(isPlus ? "lesson.bothToPlus.title" : "lesson.bothToMinus.title"),
                       say("lesson.bothAlike.why"),
                       say(isPlus ? "lesson.bothToPlus.do" : "lesson.bothToMinus.do"),
                       {}};
        const auto other = part(chain_.supply).leads[isPlus ? 1 : 0];
        for (std::size_t j = bench_.jumpers.size(); other && j-- > 0;) {
            for (const int side : {0, 1}) {
                const Hole* end = std::get_if<Hole>(&bench_.jumpers[j].ends[static_cast<std::size_t>(side)]);
                if (slip.mend || end == nullptr || !isRail(end->line)) continue;
                if (layout_.netOfHole(layout_.holeIndex(*end)) != (isPlus ? plus() : minus())) continue;
                slip.mend = mends_.endIn(bench_.jumpers[j], side, *other);
            }
        }
        return slip;
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
            return FirstSlip{say("lesson.inOneRail.title", {{"part", id}}),
                             say("lesson.inOneRail.why", {{"part", id}}),
                             action,
                             {},
                             mends_.oneLegElsewhere(part(it)),
                             say("lesson.seen.inOne"),
                             say("lesson.seen.inTwo")};
        return FirstSlip{say("lesson.inOneColumn.title", {{"part", id}, {"column", at.number}}),
                         say("lesson.inOneColumn.why", {{"part", id}}),
                         action,
                         {},
                         mends_.oneLegElsewhere(part(it)),
                         say("lesson.seen.inOne"),
                         say("lesson.seen.inTwo")};
    }

    /// A jumper joins both legs of the part that was put in last, and takes all of the current.
    MaybeSlip bridged() const {
        const int it = chain_.step == 0 ? chain_.resistor : chain_.step == 1 ? chain_.led : -1;
        if (it < 0 || net(it, 0) != net(it, 1)) return std::nullopt;
        const auto isParted = [&, id = part(it).id](const Layout& without) {
            const int same = without.bench->partIndex(id);
            return without.netOfLead[without.leadIndex(same, 0)] != without.netOfLead[without.leadIndex(same, 1)];
        };
        MaybeMend mend = mends_.without(isParted, nullptr);
        if (!mend) return std::nullopt;
        const std::string thing = std::get<Remove>(mend->edit.operations.back()).id;
        return FirstSlip{say("lesson.bridged.title", {{"thing", thing}, {"part", part(it).id}}),
                         say("lesson.bridged.why", {{"thing", thing}, {"part", part(it).id}}),
                         say("lesson.touch.do", {{"thing", thing}}),
                         {},
                         std::move(mend)};
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
        if (nearest->across) return acrossTheGap(nearest->ledLead, is, belongs, leg);
        const int off = std::abs(nearest->columns);
        const bool isFew = off <= kFewHoles, isRight = nearest->columns > 0;
        const std::string few = say("count.holes", {{"count", off}});
        FirstSlip slip{isFew ? say(isRight ? "lesson.apart.tooFarRight" : "lesson.apart.tooFarLeft", {{"holes", few}})
                             : say("lesson.apart.title"),
                       say("lesson.apart.why",
                           {{"resistorId", resistor()}, {"there", belongs.number}, {"leg", leg}, {"here", is.number}}),
                       say("lesson.apart.do", {{"leg", leg}, {"there", belongs.number}}), holes};
        slip.now = say("lesson.seen.gap");
        slip.then = say("lesson.seen.joined");
        const auto moved = shifted(bench_, part(chain_.led), -nearest->columns, 0);
        if (isFew && moved && !refusal(bench_, *moved)) {
            slip.action = say(isRight ? "lesson.apart.slideLeft" : "lesson.apart.slideRight",
                              {{"holes", few}, {"here", is.number}, {"there", belongs.number}, {"times", off}});
            slip.then = say(isRight ? "lesson.seen.leftJoined" : "lesson.seen.rightJoined", {{"holes", few}});
            slip.mend = mends_.moved(*moved, nearest->ledLead);
            slip.holes = {};  // where the leg comes to be
        } else {
            slip.mend = mends_.withLeadIn(part(chain_.led), nearest->ledLead, belongs);
            if (slip.mend) slip.holes = {};
        }
        return slip;
    }

    FirstSlip acrossTheGap(int ledLead, const Hole& is, const Hole& belongs, const std::string& leg) const {
        return {say("lesson.gap.title"),
                say("lesson.gap.why", {{"resistorId", resistor()},
                                       {"there", holeName(bench_, belongs)},
                                       {"leg", leg},
                                       {"here", holeName(bench_, is)}}),
                say("lesson.gap.do", {{"leg", leg}, {"column", belongs.number}}),
                {},
                mends_.withLeadIn(part(chain_.led), ledLead, belongs),
                say("lesson.seen.gap"),
                say("lesson.seen.joined")};
    }

    /// Plus or minus has come to the end where the other one belongs.
    MaybeSlip wrongWay() const {
        if (chain_.step < 2 || chain_.supply < 0) return std::nullopt;
        const bool plusWrong = chain_.minusEnd == plus(), minusWrong = chain_.plusEnd == minus();
        if (!plusWrong && !minusWrong) return std::nullopt;
        FirstSlip slip{say("lesson.wrongWay.title"),
                       say(plusWrong ? "lesson.wrongWay.plus" : "lesson.wrongWay.minus"),
                       say("lesson.wrongWay.byHand"),
                       {}};
        if (const auto way = mends_.turnedByKeys(part(chain_.led))) {
            slip.action = say("lesson.wrongWay.keys", {{"keys", way->keys}});
            slip.mend = mends_.moved(way->part, 0);
        } else {
            slip.mend = mends_.turnedAbout(part(chain_.led));
        }
        slip.now = say("lesson.seen.blocks");
        slip.then = say("lesson.seen.turned");
        return slip;
    }

    MaybeSlip supplyUnplugged() const {
        if (chain_.step < 2 || chain_.supply < 0) return std::nullopt;
        for (const int lead : {0, 1}) {
            if (part(chain_.supply).leads[lead] || part(chain_.supply).kind->leads[lead].socket) continue;
            return FirstSlip{say(lead == 0 ? "lesson.unplugged.red" : "lesson.unplugged.black"),
                             say("lesson.unplugged.why"),
                             say(lead == 0 ? "lesson.unplugged.redDo" : "lesson.unplugged.blackDo"),
                             {},
                             mends_.leadInRail(part(chain_.supply), lead, lead == 0)};
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
                    return unfedRail(bench_.jumpers[j], 1 - side, *wanted, bringsPlus);
                if (here.net == source && !isRail(ends.line))
                    return besideTheLeg(bench_.jumpers[j], 1 - side, legOf, leg);
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
                                 moveEnd(bench_.jumpers[j].id, ends, leg),
                                 freeIn(leg),
                                 mends_.endIn(bench_.jumpers[j], side, leg),
                                 say("lesson.seen.between"),
                                 say("lesson.seen.atTheEnd")};
            }
        }
        return std::nullopt;
    }

    std::string moveEnd(const std::string& jumper, const Hole& ends, const Hole& leg) const {
        return say(leg.line <= Line::E ? "lesson.beside.doUpper" : "lesson.beside.doLower",
                   {{"jumper", jumper}, {"from", holeName(bench_, ends)}, {"column", leg.number}});
    }

    FirstSlip unfedRail(const Jumper& wire, int end, const Hole& wanted, bool isPlus) const {
        const std::string& jumper = wire.id;
        const Hole& ends = std::get<Hole>(wire.ends[static_cast<std::size_t>(end)]);
        const std::string_view here = lineName(ends.line), there = lineName(wanted.line);
        return {say("lesson.unfed.title"),
                say(isPlus ? "lesson.unfed.plus" : "lesson.unfed.minus",
                    {{"jumper", jumper}, {"here", here}, {"there", there}}),
                say("lesson.unfed.do", {{"jumper", jumper}, {"there", there}}),
                {},
                mends_.endIn(wire, end, wanted),
                say("lesson.seen.unfed"),
                say("lesson.seen.fed")};
    }

    FirstSlip besideTheLeg(const Jumper& wire, int end, int legOf, const Hole& leg) const {
        const std::string& jumper = wire.id;
        const Hole& ends = std::get<Hole>(wire.ends[static_cast<std::size_t>(end)]);
        return {say("lesson.beside.title"),
                say("lesson.beside.why",
                    {{"jumper", jumper}, {"here", ends.number}, {"part", part(legOf).id}, {"there", leg.number}}),
                moveEnd(jumper, ends, leg),
                {},
                mends_.endIn(wire, end, leg),
                say("lesson.seen.gap"),
                say("lesson.seen.joined")};
    }

    bool isDeadEnd(const Joint& joint) const {
        int plugged = 0;
        for (const Joint& other : layout_.joints)
            plugged += other.hole >= 0 && layout_.stripOfHole[other.hole] == layout_.stripOfHole[joint.hole];
        return plugged == 1;
    }

    MaybeSlip shortsSupply() const { return shortedSupply(layout_, chain_, mends_); }

    /// The loop is closed the right way round, and there is no light.
    MaybeSlip closedAndDark() const {
        const bool isClosed = chain_.step == 3 && !chain_.reversed && chain_.minusEnd == minus();
        return isClosed ? MaybeSlip(whyDark(bench_, chain_)) : std::nullopt;
    }

    std::vector<Hole> freeIn(const Hole& hole) const {
        const auto free = nearestFreeInStrip(bench_, hole);
        return free ? std::vector<Hole>{*free} : std::vector<Hole>{};
    }

    const Layout& layout_;
    const Bench& bench_;
    const FirstChain& chain_;
    FirstMends mends_;
};

}  // namespace

std::optional<FirstSlip> firstSlip(const Snapshot& snapshot, const FirstChain& chain) {
    return SlipFinder(snapshot, chain).find();
}

}  // namespace tiepoint
