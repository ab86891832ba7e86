#include "core/slips/slip.h"

#include "core/base/capital.h"
#include "core/words/words.h"

#include <algorithm>

namespace tiepoint {
namespace {

void nameOnce(std::vector<Hole>& holes, const Hole& hole) {
    if (std::ranges::find(holes, hole) == holes.end()) holes.push_back(hole);
}

void addEnds(std::vector<Hole>& holes, const Jumper& jumper) {
    for (const JumperEnd& end : jumper.ends) {
        if (const Hole* hole = std::get_if<Hole>(&end)) nameOnce(holes, *hole);
    }
}

}  // namespace

std::vector<Hole> Slip::holes() const {
    std::vector<Hole> holes;
    for (const BenchChange* change : {&wrong, &right}) {
        for (const PlacedLead& each : change->leads) {
            if (each.to) nameOnce(holes, *each.to);
        }
        for (const PlacedEnd& each : change->ends) {
            if (const Hole* hole = std::get_if<Hole>(&each.to)) nameOnce(holes, *hole);
        }
        for (const Jumper& jumper : change->added) addEnds(holes, jumper);
    }
    return holes;
}

Edit editOf(const Bench& bench, const Slip& slip) {
    std::string name = slip.made ? mendInWords(bench, slip) : slipInWords(bench, slip);
    name.pop_back();  // the history has no full stops
    return editOf(bench, slip.change(), std::move(name));
}

std::string slipInWords(const Bench& bench, const Slip& slip) { return slip.kind->words(bench, slip); }
std::string mendInWords(const Bench& bench, const Slip& slip) {
    return capitalised(say("slip.mend", {{"do", slip.kind->mendWords(bench, slip)}}));
}
std::string seenInWords(const Slip& slip) { return say(slip.kind->seen); }

}  // namespace tiepoint
