// Junction of a diode or LED: the exponential law with ideality, and a series resistance (see junction_law.h).

#include "core/circuit/element.h"

namespace tiepoint {

constinit const ElementKind kJunctionElement = {
    "junction",
    {ElementParameter{"saturationCurrent"}, ElementParameter{"ideality", 1}, ElementParameter{"seriesResistance", 0}},
    [](Circuit& circuit, int from, int to, std::span<const double> figures) {
        return circuit.addJunction(from, to, junctionLaw(figures));
    },
};

JunctionLaw junctionLaw(std::span<const double> figures) { return JunctionLaw(figures[0], figures[1], figures[2]); }

}  // namespace tiepoint
