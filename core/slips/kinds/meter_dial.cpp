// A meter whose dial stands at the wrong place: amperes across a part, where it is next to a short; volts in the line, where it lets next to
// nothing through.

#include "core/slips/figures.h"
#include "core/slips/kinds/kinds.h"
#include "core/slips/slip_words.h"
#include "core/words/words.h"

#include <algorithm>

namespace tiepoint {
namespace {

void searchMeterDial(SlipSearch& search) {
    search.eachPart([&](int index, int away) {
        const PartKind& kind = *search.ground().part(index).kind;
        for (int state = 0; state < static_cast<int>(kind.state.size()); ++state) {
            const ValueSpec& spec = kind.state[static_cast<std::size_t>(state)];
            const bool isDial = std::ranges::any_of(kind.model, [&](const ElementSpec& element) {
                return !element.reads.empty() && element.whenState == spec.name;
            });
            for (int to = 0; isDial && to < static_cast<int>(spec.choices.size()); ++to)
                offerFigure(search, index, true, state, to, away);
        }
    });
}

std::string toldMeterDial(const Bench& bench, const Slip& slip) {
    const WrongFigure figure = figureOf(bench, slip);
    return say("slip.meter-dial",
               {{"label", figure.label}, {"part", figure.part}, {"wrong", figure.wrong}, {"right", figure.right}});
}
std::string mendMeterDial(const Bench& bench, const Slip& slip) {
    const WrongFigure figure = figureOf(bench, slip);
    return say("slip.meter-dial.mend", {{"label", figure.label}, {"part", figure.part}, {"right", figure.right}});
}

}  // namespace

const SlipKind kMeterDial{"meter-dial", 4, "slip.meter-dial.seen", true, searchMeterDial, toldMeterDial, mendMeterDial};

}  // namespace tiepoint
