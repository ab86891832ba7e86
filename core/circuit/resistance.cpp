// Resistance: current in proportion to voltage (Ohm's law).

#include "core/circuit/element.h"

namespace tiepoint {

namespace {
constexpr ElementParameter kResistanceParameters[] = {{"resistance"}};
}

constinit const ElementKind kResistanceElement = {
    {"resistance", kFromAndTo, kResistanceParameters},
    [](Circuit& circuit, std::span<const int> nodes, std::span<const double> figures) {
        return circuit.addConductor(nodes[0], nodes[1], figures[0]);
    },
};

}  // namespace tiepoint
