// Filament of a lamp: tungsten that heats itself until it radiates what it takes (see filament_law.h).

#include "core/circuit/element.h"

namespace tiepoint {

constinit const ElementKind kFilamentElement = {
    "filament",
    {ElementParameter{"voltage"}, ElementParameter{"current"}, ElementParameter{"temperature"}},
    [](Circuit& circuit, int from, int to, std::span<const double> figures) {
        return circuit.addFilament(from, to, FilamentLaw(figures[0], figures[1], figures[2]));
    },
};

}  // namespace tiepoint
