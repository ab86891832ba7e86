#include "app/commands.h"

#include "app/command.h"

namespace tiepoint::app {

std::span<const Command> commands() {
    static constexpr Command kTable[] = {
        {"solve", "Voltages, currents and brightness of a bench", declareSolve},
        {"nets", "Which holes and leads are one net", declareNets},
        {"render", "A picture of the solved bench: PNG, SVG or PDF by the ending", declareRender},
        {"diagram", "The circuit diagram of a bench or a circuit: PNG, SVG or PDF by the ending", declareDiagram},
        {"arrange", "A bench that can be built, from a circuit or another bench", declareArrange},
        {"parts", "The catalogue of part kinds", declareParts},
        {"check", "What is wrong on a bench, where, and what mends it", declareCheck},
        {"truth", "Every combination of the switches, which lights are lit, and why in logic", declareTruth},
        {"why", "Why a part is dark, so dim or so hot, and what would help", declareWhy},
        {"diagnose", "What may be wrong on a real board: what fits, what to measure next, the mend", declareDiagnose},
        {"compare", "Whether two benches are one circuit and do the same; else where they differ", declareCompare},
        {"sheet", "A plan on paper for building it from real parts; the parts list as CSV", declareSheet},
        {"slips", "Each slip that can happen on a bench: what is seen, where to look first, what proves it",
         declareSlips},
        {"resistor", "The resistor that an LED needs, from supply, colour and wanted current", declareResistor},
        {"trace", "What a bench does in time: volts and amperes at even instants", declareTrace},
        {"spread", "Between which limits the readings lie with real parts, and how long a battery lasts",
         declareSpread},
        {"hunt", "Benches with a hidden slip each, to be found with the meter, and a key", declareHunt},
        {"lesson", "Whether a lesson says what is so, and whether a class can give it with its kit", declareLesson},
    };
    return kTable;
}

}  // namespace tiepoint::app
