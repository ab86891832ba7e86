// A jumper whose wire has parted inside its insulation.

#include "core/slips/kinds/kinds.h"
#include "core/slips/search.h"

#include <fmt/format.h>

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
    return fmt::format("{} is broken inside: it joins nothing.", slip.wrong.conditions.front().id);
}
std::string mendBrokenJumper(const Bench&, const Slip& slip) {
    return fmt::format("take another wire for {}", slip.wrong.conditions.front().id);
}

}  // namespace

const SlipKind kBrokenJumper{"broken-jumper",
                             2,
                             "each jumper beeps from end to end, or another in its place changes something",
                             false,
                             searchBrokenJumper,
                             toldBrokenJumper,
                             mendBrokenJumper,
                           true};

}  // namespace tiepoint
