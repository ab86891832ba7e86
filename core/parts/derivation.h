#pragma once
// A short closed list of named derivations, for parameters of a model that are neither a number nor a value of the kind. This is no
// formula language; a new derivation is one line in the table of derivation.cpp.

#include "core/parts/part_kind.h"

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace tiepoint {

/// What a derivation makes of its arguments; `figureOf` says what each of them comes to. Asserts on a name that doesn't exist: the
/// catalogue's loader has checked all of them.
double derive(const Parameter::Derived& derived, const std::function<double(const Parameter&)>& figureOf);
/// Whether every name and derivation in it exists in the kind; the reason if not.
std::optional<std::string> unresolved(const Parameter& parameter, const PartKind& kind);
/// Names of the derivations, for the table test.
std::vector<std::string_view> derivationNames();

}  // namespace tiepoint
