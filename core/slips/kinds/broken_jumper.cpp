// A jumper whose wire has parted inside its insulation.

#include "core/slips/kinds/kinds.h"
#include "core/slips/search.h"
#include "core/words/words.h"

namespace tiepoint {
namespace {

void searchBrokenJumper(SlipSearch& search) {
    search.eachJumper([&](int index, int away) {
        const Jumper& jumper = search.ground().jumper(index);
        const bool isBroken = !hasElements(jumper.condition);
        if (isBroken != search.backwards()) return;
        BenchChange change;
        change.conditions.push_back({jumper.id, isBroken ? Condition::Sound : Condition::OpenInside});
        search.offer(std::move(change), away);
    });
}

std::string toldBrokenJumper(const Bench&, const Slip& slip) {
    return say("slip.broken-jumper", {{"jumper", slip.wrong.conditions.front().id}});
}
std::string mendBrokenJumper(const Bench&, const Slip& slip) {
    return say("slip.broken-jumper.mend", {{"jumper", slip.wrong.conditions.front().id}});
}

}  // namespace

const SlipKind kBrokenJumper{
    "broken-jumper", 2, "slip.broken-jumper.seen", false, searchBrokenJumper, toldBrokenJumper, mendBrokenJumper, true};

}  // namespace tiepoint
