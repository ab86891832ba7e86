// A supply that is switched off.

#include "core/slips/figures.h"
#include "core/slips/kinds/kinds.h"
#include "core/slips/slip_words.h"
#include "core/words/words.h"

namespace tiepoint {
namespace {

void searchSupplyOff(SlipSearch& search) {
    search.eachPart([&](int index, int away) {
        const Part& part = search.ground().part(index);
        const int on = part.kind->stateIndex("on");
        if (!part.kind->isSupply || on < 0) return;
        const bool isOn = part.stateValue(on) != 0;
        if (isOn != search.backwards()) offerFigure(search, index, true, on, isOn ? 0 : 1, away);
    });
}

std::string toldSupplyOff(const Bench& bench, const Slip& slip) {
    return say("slip.supply-off", {{"supply", partOf(bench, slip).id}});
}
std::string mendSupplyOff(const Bench& bench, const Slip& slip) {
    return say("slip.supply-off.mend", {{"supply", partOf(bench, slip).id}});
}

}  // namespace

const SlipKind kSupplyOff{"supply-off", 6, "slip.supply-off.seen", false, searchSupplyOff, toldSupplyOff,
                          mendSupplyOff};

}  // namespace tiepoint
