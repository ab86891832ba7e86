#include "core/slips/figures.h"

#include "core/slips/slip_words.h"
#include "core/words/words.h"

namespace tiepoint {

void offerFigure(SlipSearch& search, int part, bool state, int index, double to, int away, double share) {
    const Part& of = search.ground().part(part);
    const auto at = static_cast<std::size_t>(index);
    const ValueSpec& spec = state ? of.kind->state[at] : of.kind->values[at];
    const double now = state ? of.stateValue(index) : of.value(index);
    if (to == now || (spec.type == ValueType::Number && (to < spec.minimum || to > spec.maximum))) return;
    BenchChange change;
    change.figures.push_back({of.id, state, index, to});
    search.offer(std::move(change), away, share);
}

std::string figureWords(const Bench& bench, const Slip& slip) {
    const WrongFigure figure = figureOf(bench, slip);
    return say("slip.figure", {{"part", figure.part}, {"wrong", figure.wrong}, {"right", figure.right}});
}

std::string settingWords(const Bench& bench, const Slip& slip) {
    const WrongFigure figure = figureOf(bench, slip);
    return say(figure.counts ? "slip.figure.counted" : "slip.figure.isSet",
               {{"label", figure.label}, {"part", figure.part}, {"wrong", figure.wrong}, {"right", figure.right}});
}

std::string takeWords(const Bench& bench, const Slip& slip) {
    const WrongFigure figure = figureOf(bench, slip);
    return say("slip.figure.take", {{"right", figure.right}, {"part", figure.part}});
}

std::string setWords(const Bench& bench, const Slip& slip) {
    const WrongFigure figure = figureOf(bench, slip);
    return say(figure.counts ? "slip.figure.setCount" : "slip.figure.set",
               {{"label", figure.label}, {"part", figure.part}, {"right", figure.right}});
}

}  // namespace tiepoint
