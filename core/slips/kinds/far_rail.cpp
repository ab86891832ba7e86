// A lead or an end in the rail of the right sign, but at the other edge, where no supply reaches.

#include "core/slips/kinds/kinds.h"
#include "core/slips/reach.h"
#include "core/slips/search.h"
#include "core/slips/slip_words.h"

namespace tiepoint {
namespace {

void searchFarRail(SlipSearch& search) {
    search.eachTip([&](const Tip& tip, int away) {
        search.offerMove(tip, holesOfFarRail(search.ground(), search.ground().holeAt(tip.hole)), away);
    });
}

}  // namespace

const SlipKind kFarRail{"far-rail", 3, "slip.far-rail.seen", true, searchFarRail, misplacedWords, putWords};

}  // namespace tiepoint
