// A part that looks sound and lets nothing through: a light that burnt out, a resistor or a switch that is open inside.

#include "core/slips/kinds/kinds.h"
#include "core/slips/search.h"
#include "core/words/words.h"

namespace tiepoint {
namespace {

void searchDeadPart(SlipSearch& search) {
    search.eachPart([&](int index, int away) {
        const Part& part = search.ground().part(index);
        const bool isSound = hasElements(part.condition);
        if (part.kind->isSupply || isSound == search.backwards()) return;
        const Condition broken = part.kind->emitsLight ? Condition::Dead : Condition::OpenInside;
        BenchChange change;
        change.conditions.push_back({part.id, isSound ? broken : Condition::Sound});
        search.offer(std::move(change), away);
    });
}

std::string toldDeadPart(const Bench&, const Slip& slip) {
    const SetCondition& wrong = slip.wrong.conditions.front();
    return say(wrong.to == Condition::Dead ? "slip.dead-part.dead" : "slip.dead-part.open", {{"part", wrong.id}});
}
std::string mendDeadPart(const Bench&, const Slip& slip) {
    return say("slip.dead-part.mend", {{"part", slip.wrong.conditions.front().id}});
}

}  // namespace

const SlipKind kDeadPart{"dead-part",  2,   "slip.dead-part.seen", false, searchDeadPart, toldDeadPart,
                         mendDeadPart, true};

}  // namespace tiepoint
