// A meter whose dial stands at the wrong place: amperes across a part, where it is next to a short; volts in the line, where it lets next to
// nothing through.

#include "core/slips/figures.h"
#include "core/slips/kinds/kinds.h"
#include "core/slips/slip_words.h"

#include <fmt/format.h>

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
    return fmt::format("The {} of {} stands at {} and not at {}.", figure.label, figure.part, figure.wrong,
                       figure.right);
}
std::string mendMeterDial(const Bench& bench, const Slip& slip) {
    const WrongFigure figure = figureOf(bench, slip);
    return fmt::format("turn the {} of {} to {}", figure.label, figure.part, figure.right);
}

}  // namespace

const SlipKind kMeterDial{"meter-dial",
                          4,
                          "the dial of the meter suits where its leads are: volts across, amperes in the line",
                          true,
                          searchMeterDial,
                          toldMeterDial,
                          mendMeterDial};

}  // namespace tiepoint
