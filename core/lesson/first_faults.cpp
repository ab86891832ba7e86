#include "core/lesson/first_faults.h"

#include "core/edit/swap.h"
#include "core/words/words.h"

#include <utility>

namespace tiepoint {
namespace {

constexpr double kEnoughVolt = 3, kUsualVolt = 5, kUsualOhm = 330;  ///< the last two as the words have them

FirstSlip setRight(std::string headline, std::string reason, std::string action, Edit edit) {
    return {std::move(headline), std::move(reason), std::move(action), {}, FirstMend{std::move(edit), {}, {}}};
}

}  // namespace

std::optional<FirstSlip> shortedSupply(const Layout& layout, const FirstChain& chain, const FirstMends& mends) {
    if (chain.supply < 0) return std::nullopt;
    const std::string& id = layout.bench->parts[chain.supply].id;
    const auto isParted = [&](const Layout& each) {
        const int supply = each.bench->partIndex(id);
        const int plus = each.netOfLead[each.leadIndex(supply, 0)];
        return plus < 0 || plus != each.netOfLead[each.leadIndex(supply, 1)];
    };
    if (isParted(layout)) return std::nullopt;
    MaybeMend mend = mends.without(isParted, nullptr);
    if (!mend) return std::nullopt;
    const std::string thing = std::get<Remove>(mend->edit.operations.back()).id;
    return FirstSlip{say("lesson.touch.title"),
                     say("lesson.touch.why", {{"thing", thing}}),
                     say("lesson.touch.do", {{"thing", thing}}),
                     {},
                     std::move(mend)};
}

FirstSlip whyDark(const Bench& bench, const FirstChain& chain) {
    const Part &supply = bench.parts[chain.supply], &resistor = bench.parts[chain.resistor];
    const int on = supply.kind->stateIndex("on");
    if (on >= 0 && supply.stateValue(on) == 0) {
        return setRight(say("lesson.off.title"), say("lesson.off.why"), say("lesson.off.do", {{"supply", supply.id}}),
                        setStateEdit(bench, supply.id, "on", 1));
    }
    for (const int each : {chain.resistor, chain.led}) {
        const Part& part = bench.parts[each];
        if (part.condition == Condition::Sound) continue;
        return setRight(say("lesson.broken.title", {{"part", part.id}}), say("lesson.broken.why", {{"part", part.id}}),
                        say("lesson.broken.do", {{"part", part.id}}), swapEdit(bench, part.id));
    }
    const int volt = supply.kind->valueIndex("voltage");
    if (volt >= 0 && supply.value(volt) < kEnoughVolt) {
        return setRight(say("lesson.weak.title"), say("lesson.weak.why"),
                        say("lesson.weak.do", {{"supply", supply.id}}),
                        setValueEdit(bench, supply.id, "voltage", kUsualVolt));
    }
    return setRight(say("lesson.hardly.title"), say("lesson.hardly.why", {{"resistorId", resistor.id}}),
                    say("lesson.hardly.do", {{"resistorId", resistor.id}}),
                    setValueEdit(bench, resistor.id, "resistance", kUsualOhm));
}

}  // namespace tiepoint
