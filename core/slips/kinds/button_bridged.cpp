// An end at the wrong pair of a push button: both wires on legs that are one metal inside, so that pressing does nothing.

#include "core/slips/exchangeable.h"
#include "core/slips/kinds/kinds.h"
#include "core/slips/other_end.h"
#include "core/slips/slip_words.h"

namespace tiepoint {
namespace {

void searchButtonBridged(SlipSearch& search) {
    search.eachPart([&](int index, int away) {
        const PartKind& kind = *search.ground().part(index).kind;
        const auto ends = twoEndsOf(kind);
        if (!ends || kind.joined.empty() || kind.package->reach != Reach::Rigid) return;
        // Legs of one pair may stand in different strips, on both sides of the gap.
        for (const auto& one : kind.joined) {
            for (const auto& other : kind.joined) {
                if (&one == &other) continue;
                for (const int lead : one) {
                    for (const int across : other) offerOtherEnd(search, index, lead, across, away);
                }
            }
        }
    });
}

}  // namespace

const SlipKind kButtonBridged{"button-bridged", 3,       "slip.button-bridged.seen", true, searchButtonBridged,
                              wrongEndWords,    putWords};

}  // namespace tiepoint
