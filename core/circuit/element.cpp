#include "core/circuit/element.h"

#include "core/bench/resolve.h"

#include <algorithm>
#include <cassert>

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

ElementFigures figuresOf(const ElementKind& element, const ElementSpec& spec, const Part& part) {
    ElementFigures figures{};
    for (std::size_t i = 0; i < element.parameterCount(); ++i) {
        const ElementParameter& parameter = element.parameters[i];
        const auto given =
            std::ranges::find_if(spec.parameters, [&](const auto& each) { return each.first == parameter.name; });
        const bool isGiven = given != spec.parameters.end();
        assert((isGiven || parameter.fallback) && "the catalogue's loader checks that required figures are given");
        figures[i] = isGiven ? resolve(given->second, part) : parameter.fallback.value_or(0);
    }
    return figures;
}

}  // namespace tiepoint
