// Supply: an electromotive force with a series resistance, and a limit of its current in both directions. `from` is plus.

#include "core/circuit/element.h"

namespace tiepoint {

constinit const ElementKind kSupplyElement = {
    "supply",
    {ElementParameter{"voltage"}, ElementParameter{"seriesResistance", 0},
     ElementParameter{"currentLimit", std::numeric_limits<double>::infinity()}},
    [](Circuit& circuit, int from, int to, std::span<const double> figures) {
        return circuit.addSupply(from, to, figures[0], figures[1], figures[2]);
    },
};

}  // namespace tiepoint
