// A black jumper in plus or a red one in minus: it works, and confuses whoever reads the board (common practice: red for plus,
// black for minus).

#include "core/behaviour/supply_nets.h"
#include "core/findings/figure_words.h"
#include "core/findings/rules.h"
#include "core/words/words.h"

#include <algorithm>

namespace tiepoint {

Suspicions findColoursThatMislead(const Examination& examination) {
    const Layout& layout = examination.layout();
    const Bench& bench = examination.bench();
    const auto supplies = supplyNets(layout);
    const int red = findJumperColour("red"), black = findJumperColour("black");
    Suspicions all;
    for (std::size_t j = 0; j < bench.jumpers.size(); ++j) {
        const Jumper& jumper = bench.jumpers[j];
        const int net = layout.joints[layout.jumperJoints[j][0]].net;
        const bool plus = std::ranges::find(supplies, net, &SupplyNets::plus) != supplies.end();
        const bool minus = std::ranges::find(supplies, net, &SupplyNets::minus) != supplies.end();
        const int wrong = plus ? black : red;
        if (plus == minus || jumper.colour != wrong) continue;  // between two cells in a row a net is both
        Jumper painted = jumper;
        painted.colour = plus ? red : black;
        Suspicion found;
        found.finding.severity = Severity::Remark;
        found.finding.parts = {jumper.id};
        for (const JumperEnd& end : jumper.ends) {
            if (const Hole* hole = std::get_if<Hole>(&end)) found.finding.holes.push_back(*hole);
        }
        found.finding.text = say(plus ? "finding.colour.plus" : "finding.colour.minus",
                                 {{"jumper", jumper.id}, {"colour", jumperColours()[wrong].name}});
        if (const Figure volt = examination.now().shown().volt(net); volt.isKnown())
            addFigure(found.finding, "voltage", volt);
        found.proposals.push_back(
            {say("mend.takeJumper", {{"colour", jumperColours()[painted.colour].name}, {"jumper", jumper.id}}),
             {say("history.colour", {{"thing", jumper.id}}), {ReplaceJumper{painted}}}});
        all.push_back(std::move(found));
    }
    return all;
}

}  // namespace tiepoint
