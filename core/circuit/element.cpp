#include "core/circuit/element.h"

#include "core/bench/resolve.h"

#include <algorithm>
#include <cassert>

namespace tiepoint {

namespace {

constexpr std::array kLinearElements = {&kResistanceElement, &kSupplyElement, &kContactElement};

template <class... Each>
constexpr auto tableWith(LawList<Each...>) {
    std::array<const ElementKind*, kLinearElements.size() + sizeof...(Each)> table{};
    std::copy(kLinearElements.begin(), kLinearElements.end(), table.begin());
    std::size_t next = kLinearElements.size();
    ((table[next++] = &kElementOf<Each>), ...);
    return table;
}

constexpr auto kElements = tableWith(Laws{});

}  // namespace

std::span<const ElementKind* const> elementKinds() { return kElements; }

const ElementKind* findElement(std::string_view name) {
    const auto found =
        std::find_if(kElements.begin(), kElements.end(), [&](const ElementKind* e) { return e->name == name; });
    return found == kElements.end() ? nullptr : *found;
}

bool drives(const PartKind& kind, const ElementSpec& spec) {
    const ElementKind* element = findElement(spec.element);
    return element == &kSupplyElement || (kind.isSupply && element && element->drives);
}

bool movesByItself(const Bench& bench) {
    return std::ranges::any_of(bench.parts, [](const Part& part) {
        return std::ranges::any_of(part.kind->model, [&part](const ElementSpec& spec) {
            const ElementKind* element = findElement(spec.element);
            const bool bounces = element == &kContactElement && figuresOf(*element, spec, part)[kContactBounce] > 0;
            return element && (element->moves || bounces);
        });
    });
}

std::vector<JoinedTerminals> joinedBy(const ElementSpec& spec, const Part& part, double told) {
    const ElementKind* element = findElement(spec.element);
    std::vector<JoinedTerminals> joined;
    if (!element->joins)
        joined.push_back({0, static_cast<int>(element->terminals.size()) - 1, std::numeric_limits<double>::infinity()});
    else
        element->joins(figuresOf(*element, spec, part), told, joined);
    return joined;
}

std::vector<double> figuresOf(const ElementKind& element, const ElementSpec& spec, const Part& part) {
    std::vector<double> figures;
    figures.reserve(element.parameters.size());
    for (const ElementParameter& parameter : element.parameters) {
        const auto given =
            std::ranges::find_if(spec.parameters, [&](const auto& each) { return each.first == parameter.name; });
        const bool isGiven = given != spec.parameters.end();
        assert((isGiven || parameter.fallback) && "the catalogue's loader checks that required figures are given");
        figures.push_back(isGiven ? resolve(given->second, part) : parameter.fallback.value_or(0));
    }
    return figures;
}

}  // namespace tiepoint
