#include "core/slips/other_end.h"

#include "core/base/capital.h"
#include "core/slips/slip_words.h"
#include "core/words/words.h"

namespace tiepoint {

void offerOtherEnd(SlipSearch& search, int part, int lead, int other, int away) {
    const Ground& ground = search.ground();
    const auto &from = ground.part(part).leads[static_cast<std::size_t>(lead)],
               &to = ground.part(part).leads[static_cast<std::size_t>(other)];
    if (!from || !to) return;
    search.tellBy(ground.part(part).id);
    for (const auto& [here, there] : {std::pair(*from, *to), std::pair(*to, *from)}) {
        for (const int index : ground.tipsIn(ground.stripOf(ground.holeIndex(here)))) {
            const Tip& tip = ground.tips()[static_cast<std::size_t>(index)];
            ground.count(1);
            if (tip.alone && (tip.jumper || tip.thing != part)) search.offerMove(tip, there, away);
        }
    }
    search.tellBy({});
}

std::string wrongEndWords(const Bench& bench, const Slip& slip) {
    const Misplaced tip = misplacedBy(bench, slip).front();
    return capitalised(say("slip.otherEnd", {{"tip", tip.tip},
                                             {"part", slip.about},
                                             {"here", placeName(bench, tip.wrong)},
                                             {"there", placeName(bench, tip.right)}}));
}

}  // namespace tiepoint
