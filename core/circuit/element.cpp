#include "core/circuit/element.h"

#include <algorithm>

namespace tiepoint {

namespace {

constexpr std::array kElements = {
    &kResistanceElement, &kJunctionElement, &kSupplyElement, &kContactElement, &kFilamentElement,
};

}  // namespace

std::span<const ElementKind* const> elementKinds() { return kElements; }

const ElementKind* findElement(std::string_view name) {
    const auto found =
        std::find_if(kElements.begin(), kElements.end(), [&](const ElementKind* e) { return e->name == name; });
    return found == kElements.end() ? nullptr : *found;
}

}  // namespace tiepoint
