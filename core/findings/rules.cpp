#include "core/findings/rules.h"

#include <algorithm>

namespace tiepoint {

std::span<const Rule> rules() {
    constexpr bool kOnlyProven = true, kFollows = true, kAtOnce = true, kOfBroken = true;
    static constexpr Rule kTable[] = {
        {"short-circuit", "Plus and minus of a supply joined by metal or next to no resistance.", findShortCircuits,
         !kOnlyProven, !kFollows, kAtOnce},
        {"no-solution", "No voltages and currents satisfy the circuit.", findNoSolution, !kOnlyProven, !kFollows,
         kAtOnce},
        {"supply-conflict", "Supplies that push current through each other.", findSupplyConflicts, !kOnlyProven,
         kFollows, kAtOnce},
        {"reversed", "An LED, a diode or a supply the wrong way round.", findReversed, !kOnlyProven, kFollows},
        {"always-closed", "A switch turned so that it always conducts.", findAlwaysClosed},
        {"bypassed", "All legs of a part in one net.", findBypassed, !kOnlyProven, kFollows},
        {"shared-resistor", "LEDs side by side behind one resistor.", findSharedResistors, !kOnlyProven, kFollows},
        {"too-dim", "A light far below a visible current.", findTooDim, !kOnlyProven, kFollows},
        {"gap-crossed", "A circuit that counts on metal across the gap.", findGapCrossed, kOnlyProven, kFollows},
        {"rail-halves", "The halves of a split rail not bridged.", findRailHalves, kOnlyProven, kFollows},
        {"rails-apart", "Rails of one sign not tied while a part needs both.", findRailsApart, kOnlyProven, kFollows},
        {"one-hole-off", "A lead whose neighbouring strip would close the circuit.", findOneHoleOff, kOnlyProven,
         kFollows},
        {"too-little-voltage", "Lights that the supply can't light.", findTooLittleVoltage, kOnlyProven, kFollows},
        {"meter-dial", "A meter whose dial doesn't suit what its leads are in.", findWrongDials, !kOnlyProven,
         kFollows},
        {"no-effect", "A switch that changes nothing.", findWithoutEffect, !kOnlyProven, kFollows},
        {"lead-alone", "A lead alone in its net, or hanging free.", findLeadsAlone, !kOnlyProven, kFollows},
        {"one-wire", "A circuit that leads from plus to nowhere.", findOneWire, !kOnlyProven, kFollows},
        {"open-loop", "A loop that is open, and where.", findOpenLoops, !kOnlyProven, kFollows},
        {"over-current", "More current than the maximum of a part or of the board's metal.", findOverCurrent,
         !kOnlyProven, kFollows, kAtOnce},
        {"over-power", "More heat than a part is rated for.", findOverPower, !kOnlyProven, kFollows, kAtOnce},
        {"over-voltage", "More voltage than a part's maximum.", findOverVoltage, !kOnlyProven, kFollows, kAtOnce},
        {"floating-lead", "A gate that nothing holds at a voltage.", findFloatingLeads, !kOnlyProven, kFollows},
        {"coil-spike", "A coil that pushes high when its current is cut off.", findCoilSpikes, !kOnlyProven, kFollows},
        {"wiper-short", "A knob that shorts or burns something at one end of its travel.", findWiperShorts,
         !kOnlyProven, kFollows},
        {"overlap", "Bodies that overlap.", findOverlaps, !kOnlyProven, !kFollows, kAtOnce},
        {"not-buildable", "What hands couldn't put together so.", findNotBuildable, !kOnlyProven, !kFollows, kAtOnce},
        {"bare-leads", "Bare leads that touch other metal.", findBareLeads, !kOnlyProven, !kFollows, kAtOnce},
        {"idle-jumper", "A jumper with both ends in one net already.", findIdleJumpers},
        {"colour-misleads", "A black jumper in plus or a red one in minus.", findColoursThatMislead},
        {"a-moment", "A light that is lit only for a moment.", findMoments, !kOnlyProven, kFollows},
        {"supply-off", "A supply is switched off while something is connected to it.", findSuppliesOff},
        {"passes-nothing", "A broken thing that would carry current if it were sound.", findBroken, !kOnlyProven,
         kFollows, !kAtOnce, kOfBroken},
    };
    return kTable;
}

const Rule* findRule(std::string_view name) {
    const auto found = std::ranges::find(rules(), name, &Rule::name);
    return found == rules().end() ? nullptr : &*found;
}

}  // namespace tiepoint
