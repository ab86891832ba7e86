#pragma once
// Resolving the parameters of a model against the settings of a part: numbers, values, constants of a choice, and a short closed
// list of named derivations. This is no formula language; a new derivation is one line in the table of derivation.cpp.

#include "core/bench/bench.h"

#include <string>
#include <vector>

namespace tiepoint {

/// A parameter in figures for one part. A name is looked up among the kind's values, then its states, then the constants of
/// each choice in force. Asserts on a name that doesn't exist: the catalogue's loader has checked all of them.
double resolve(const Parameter& parameter, const Part& part);
/// Whether every name and derivation in it exists in the kind; the reason if not.
std::optional<std::string> unresolved(const Parameter& parameter, const PartKind& kind);
/// The current at which a light is as bright as it is made to be; 0 for parts that give no light.
double ratedCurrentAmpere(const Part& part);
/// Names of the derivations, for the table test.
std::vector<std::string_view> derivationNames();

}  // namespace tiepoint
