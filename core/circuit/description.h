#pragma once
// How an element is described: the names of its terminals and of the figures that a model gives it. Constant data.

#include <optional>
#include <span>
#include <string_view>

namespace tiepoint {

/// A figure that a model gives to an element, by name; without a fallback the model must give it.
struct ElementParameter {
    std::string_view name;
    std::optional<double> fallback = std::nullopt;
};

struct ElementDescription {
    std::string_view name;
    std::span<const std::string_view> terminals;   ///< in the order in which a model lists its nodes
    std::span<const ElementParameter> parameters;  ///< as many as the element has figures
};

/// The terminals of every element that has two.
inline constexpr std::string_view kFromAndTo[] = {"from", "to"};

}  // namespace tiepoint
