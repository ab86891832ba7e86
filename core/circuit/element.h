#pragma once
// Elements: what the models of part kinds are made of. One file an element (resistance.cpp, ...), one line in the table of
// element.cpp. An element turns resolved figures into one branch of the compiled circuit.
// Thread rule: constant data.

#include "core/bench/bench.h"
#include "core/circuit/circuit.h"

#include <array>
#include <optional>
#include <span>
#include <string_view>

namespace tiepoint {

/// A figure that a model gives to an element, by name; without a fallback the model must give it.
struct ElementParameter {
    std::string_view name;
    std::optional<double> fallback = std::nullopt;
};

struct ElementKind {
    static constexpr std::size_t kMostParameters = 3;

    std::string_view name;
    std::array<ElementParameter, kMostParameters> parameters;  ///< unused ones at the end have no name
    /// Adds the element between two nodes; figures in the order of the parameters. Returns its number.
    int (*add)(Circuit& circuit, int from, int to, std::span<const double> figures);

    std::size_t parameterCount() const {
        std::size_t count = 0;
        while (count < parameters.size() && !parameters[count].name.empty()) ++count;
        return count;
    }
};

std::span<const ElementKind* const> elementKinds();
/// The element of that name, or null.
const ElementKind* findElement(std::string_view name);

/// By parameter of an element; unused ones at the end are 0.
using ElementFigures = std::array<double, ElementKind::kMostParameters>;
/// What a part's model gives an element, resolved for the part; the fallback of what it doesn't give.
ElementFigures figuresOf(const ElementKind& element, const ElementSpec& spec, const Part& part);

extern const ElementKind kResistanceElement;
extern const ElementKind kJunctionElement;
extern const ElementKind kSupplyElement;
extern const ElementKind kContactElement;
extern const ElementKind kFilamentElement;

/// The law of a junction with the figures of its element.
JunctionLaw junctionLaw(std::span<const double> figures);

}  // namespace tiepoint
