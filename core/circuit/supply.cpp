// Supply: an electromotive force with a series resistance, and a limit of its current in both directions. `from` is plus.

#include "core/circuit/element.h"

namespace tiepoint {

namespace {
constexpr ElementParameter kSupplyParameters[] = {
    {"voltage"}, {"seriesResistance", 0}, {"currentLimit", std::numeric_limits<double>::infinity()}};
}

constinit const ElementKind kSupplyElement = {
    {"supply", kFromAndTo, kSupplyParameters},
    [](Circuit& circuit, std::span<const int> nodes, std::span<const double> figures) {
        return circuit.addSupply(nodes[0], nodes[1], figures[0], figures[1], figures[2]);
    },
    false,
    true,
};

}  // namespace tiepoint
