// Contact of a switch: a small resistance while it is closed, absent while it is open.

#include "core/circuit/element.h"

namespace tiepoint {

namespace {
constexpr ElementParameter kContactParameters[] = {{"contactResistance"}, {"bounceTime", 0}};
}

constinit const ElementKind kContactElement = {
    {"contact", kFromAndTo, kContactParameters},
    [](Circuit& circuit, std::span<const int> nodes, std::span<const double> figures) {
        return circuit.addConductor(nodes[0], nodes[1], figures[0]);
    },
};

}  // namespace tiepoint
