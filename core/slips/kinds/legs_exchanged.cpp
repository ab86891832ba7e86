// Legs of two neighbouring parts in each other's columns.

#include "core/slips/kinds/kinds.h"
#include "core/slips/reach.h"
#include "core/slips/search.h"
#include "core/slips/slip_words.h"
#include "core/words/words.h"

namespace tiepoint {
namespace {

void offerWith(SlipSearch& search, const Tip& tip, int strip, int away) {
    const Ground& ground = search.ground();
    for (const int index : ground.tipsIn(strip)) {
        const Tip& other = ground.tips()[static_cast<std::size_t>(index)];
        ground.count(1);
        if (other.jumper || !other.alone || other.thing == tip.thing) continue;
        BenchChange change;
        change.leads = {{ground.idOf(tip), tip.lead, ground.holeAt(other.hole)},
                        {ground.idOf(other), other.lead, ground.holeAt(tip.hole)}};
        search.offer(std::move(change), away);
    }
}

void searchLegsExchanged(SlipSearch& search) {
    const Ground& ground = search.ground();
    search.eachTip([&](const Tip& tip, int away) {
        const Hole from = ground.holeAt(tip.hole);
        if (tip.jumper || isRail(from.line)) return;
        for (const int places : {1, 2}) {
            for (const Hole& to : holesAlong(ground, from, places))
                offerWith(search, tip, ground.stripOf(ground.holeIndex(to)), away);
        }
    });
}

std::string toldLegsExchanged(const Bench& bench, const Slip& slip) {
    return say("slip.legs-exchanged",
               {{"one", tipInWords(bench, slip.wrong.leads[0])}, {"other", tipInWords(bench, slip.wrong.leads[1])}});
}
std::string mendLegsExchanged(const Bench& bench, const Slip& slip) {
    return say("slip.legs-exchanged.mend",
               {{"one", tipInWords(bench, slip.wrong.leads[0])}, {"other", tipInWords(bench, slip.wrong.leads[1])}});
}

}  // namespace

const SlipKind kLegsExchanged{
    "legs-exchanged", 2, "slip.legs-exchanged.seen", true, searchLegsExchanged, toldLegsExchanged, mendLegsExchanged};

}  // namespace tiepoint
