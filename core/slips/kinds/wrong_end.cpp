// Both wires on one end of a part: what should go to its other end bypasses it. Seen in many groups of a first course.

#include "core/slips/exchangeable.h"
#include "core/slips/kinds/kinds.h"
#include "core/slips/other_end.h"
#include "core/slips/slip_words.h"

namespace tiepoint {
namespace {

void searchWrongEnd(SlipSearch& search) {
    search.eachPart([&](int index, int away) {
        const PartKind& kind = *search.ground().part(index).kind;
        const auto ends = twoEndsOf(kind);
        if (ends && kind.joined.empty()) offerOtherEnd(search, index, ends->first, ends->second, away);
    });
}

}  // namespace

const SlipKind kWrongEnd{"wrong-end", 3, "slip.wrong-end.seen", true, searchWrongEnd, wrongEndWords, putWords};

}  // namespace tiepoint
