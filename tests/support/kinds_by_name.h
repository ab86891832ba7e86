#pragma once
// Kinds of the catalogue and their parameters by name; throws where there is none.

#include "core/bench/bench.h"

#include <stdexcept>
#include <string>
#include <string_view>

namespace tiepoint::test {

inline const PartKind& kindOf(std::string_view name) {
    const PartKind* kind = findKind(name);
    if (!kind) throw std::invalid_argument(std::string(name));
    return *kind;
}

inline const Parameter& parameterOf(const ElementSpec& element, std::string_view name) {
    for (const auto& [each, parameter] : element.parameters) {
        if (each == name) return parameter;
    }
    throw std::invalid_argument(std::string(name));
}

}  // namespace tiepoint::test
