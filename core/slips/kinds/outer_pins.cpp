// Wires at the wrong legs of a part with three in line: a slide switch by its outer legs, a potentiometer without its wiper.

#include "core/base/capital.h"
#include "core/slips/kinds/kinds.h"
#include "core/slips/other_end.h"
#include "core/slips/slip_words.h"
#include "core/words/words.h"

namespace tiepoint {
namespace {

constexpr std::size_t kLegsInLine = 3;

void searchOuterPins(SlipSearch& search) {
    search.eachPart([&](int index, int away) {
        const PartKind& kind = *search.ground().part(index).kind;
        if (kind.package->reach != Reach::Rigid || kind.leads.size() != kLegsInLine || !kind.joined.empty()) return;
        for (const auto& [lead, other] : {std::pair(0, 1), std::pair(1, 2), std::pair(0, 2)})
            offerOtherEnd(search, index, lead, other, away);
    });
}

std::string toldOuterPins(const Bench& bench, const Slip& slip) {
    const Misplaced tip = misplacedBy(bench, slip).front();
    return capitalised(say("slip.outer-pins", {{"tip", tip.tip},
                                               {"part", slip.about},
                                               {"here", placeName(bench, tip.wrong)},
                                               {"there", placeName(bench, tip.right)}}));
}

}  // namespace

const SlipKind kOuterPins{"outer-pins", 3, "slip.outer-pins.seen", true, searchOuterPins, toldOuterPins, putWords};

}  // namespace tiepoint
