// Cells or a block that are used up.

#include "core/slips/figures.h"
#include "core/slips/kinds/kinds.h"
#include "core/slips/slip_words.h"
#include "core/words/words.h"

namespace tiepoint {
namespace {

/// The choices of a supply's condition stand from the freshest to the weakest.
void searchWeakCells(SlipSearch& search) {
    search.eachPart([&](int index, int away) {
        const Part& part = search.ground().part(index);
        const int condition = part.kind->valueIndex("condition");
        if (!part.kind->isSupply || condition < 0) return;
        const auto& choices = part.kind->values[static_cast<std::size_t>(condition)].choices;
        const double now = part.value(condition);
        for (int to = 0; to < static_cast<int>(choices.size()); ++to) {
            if ((to > now) != search.backwards()) offerFigure(search, index, false, condition, to, away);
        }
    });
}

std::string mendWeakCells(const Bench& bench, const Slip& slip) {
    const WrongFigure figure = figureOf(bench, slip);
    return say("slip.weak-cells.mend", {{"condition", figure.right}, {"supply", figure.part}});
}

}  // namespace

const SlipKind kWeakCells{"weak-cells",    3,           "slip.weak-cells.seen", false,
                          searchWeakCells, figureWords, mendWeakCells,          true};

}  // namespace tiepoint
