#pragma once
// Inputs as they hold on a bench. Pure; safe from any thread.

#include "core/bench/bench.h"
#include "core/instant/inputs.h"

namespace tiepoint {

/// What a bench says of its surroundings holds there; where it says nothing, what the inputs say.
inline Inputs inputsOn(const Bench& bench, Inputs inputs) {
    if (bench.surroundings) inputs.surroundings = *bench.surroundings;
    return inputs;
}

}  // namespace tiepoint
