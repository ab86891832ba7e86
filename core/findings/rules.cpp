#include "core/findings/rules.h"

namespace tiepoint {

std::span<const Rule> rules() {
    constexpr bool kOnlyProven = true, kFollows = true;
    static constexpr Rule kTable[] = {
        {"short-circuit", "Plus and minus of a supply joined by metal or next to no resistance.", findShortCircuits},
        {"no-solution", "No voltages and currents satisfy the circuit.", findNoSolution},
        {"reversed", "An LED, a diode or a supply the wrong way round.", findReversed, !kOnlyProven, kFollows},
        {"bypassed", "All leads of a part in one net.", findBypassed, !kOnlyProven, kFollows},
        {"one-hole-off", "A lead whose neighbouring strip would close the circuit.", findOneHoleOff, kOnlyProven, kFollows},
        {"lead-alone", "A lead alone in its net, or hanging free.", findLeadsAlone, !kOnlyProven, kFollows},
        {"over-current", "More current than a part or the board's metal bears.", findOverCurrent, !kOnlyProven, kFollows},
        {"over-power", "More heat than a part bears.", findOverPower, !kOnlyProven, kFollows},
        {"over-voltage", "More voltage than a part bears.", findOverVoltage, !kOnlyProven, kFollows},
        {"supply-off", "A supply is switched off while something is connected to it.", findSuppliesOff},
    };
    return kTable;
}

}  // namespace tiepoint
