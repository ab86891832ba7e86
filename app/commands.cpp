#include "app/commands.h"

#include "app/command.h"

namespace tiepoint::app {

std::span<const Command> commands() {
    static constexpr Command kTable[] = {
        {"solve", "Voltages, currents and brightness of a bench", declareSolve},
        {"nets", "Which holes and leads are one net", declareNets},
        {"render", "A picture of the solved bench: PNG, SVG or PDF by the ending", declareRender},
        {"parts", "The catalogue of part kinds", declareParts},
        {"check", "What is wrong on a bench, where, and what mends it", declareCheck},
        {"truth", "Every combination of the switches, which lights are lit, and why in logic", declareTruth},
        {"why", "Why a part is dark, so dim or so hot, and what would help", declareWhy},
        {"diagnose", "What may be wrong on a real board: what fits, what to measure next, the mend", declareDiagnose},
        {"resistor", "The resistor that an LED needs, from supply, colour and wanted current", declareResistor},
    };
    return kTable;
}

}  // namespace tiepoint::app
