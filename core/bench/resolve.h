#pragma once
// The parameters of a kind in figures for one part: numbers, values in force, constants of a choice, and derivations of them. Pure.

#include "core/bench/bench.h"

namespace tiepoint {

/// A parameter in figures for one part. A name is looked up among the kind's values, then its states, then the constants of
/// each choice in force. Asserts on a name that doesn't exist: the catalogue's loader has checked all of them.
double resolve(const Parameter& parameter, const Part& part);
/// The package of a part; of a family whose size follows values it is the size for this part.
const Package& packageOf(const Part& part);
/// The current at which a light is as bright as it is made to be; 0 for parts that give no light.
double ratedCurrentAmpere(const Part& part);

}  // namespace tiepoint
