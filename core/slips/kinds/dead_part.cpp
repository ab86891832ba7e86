// A part that looks sound and lets nothing through: a light that burnt out, a resistor or a switch that is open inside.

#include "core/slips/kinds/kinds.h"
#include "core/slips/search.h"

#include <fmt/format.h>

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
    return fmt::format("{} is {}: nothing passes through it.", wrong.id,
                       wrong.to == Condition::Dead ? "dead" : "open inside");
}
std::string mendDeadPart(const Bench&, const Slip& slip) {
    return fmt::format("put another part in place of {}", slip.wrong.conditions.front().id);
}

}  // namespace

const SlipKind kDeadPart{"dead-part",
                         2,
                         "the part works elsewhere: put it into a circuit that does, or another in its place",
                         false,
                         searchDeadPart,
                         toldDeadPart,
                         mendDeadPart,
                           true};

}  // namespace tiepoint
