// Resistance: current in proportion to voltage (Ohm's law).

#include "core/circuit/element.h"

namespace tiepoint {

constinit const ElementKind kResistanceElement = {
    "resistance",
    {ElementParameter{"resistance"}},
    [](Circuit& circuit, int from, int to, std::span<const double> figures) {
        return circuit.addConductor(from, to, figures[0]);
    },
};

}  // namespace tiepoint
