// Contact of a switch: a small resistance while it is closed, absent while it is open.

#include "core/circuit/element.h"

namespace tiepoint {

constinit const ElementKind kContactElement = {
    "contact",
    {ElementParameter{"contactResistance"}},
    [](Circuit& circuit, int from, int to, std::span<const double> figures) {
        return circuit.addConductor(from, to, figures[0]);
    },
};

}  // namespace tiepoint
