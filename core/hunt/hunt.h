#pragma once
// Hunts: benches with a hidden slip each, drawn from a number. The same bench and number give the same hunts on every machine; different
// numbers give different ones.
//
// All hunts of a set are equally hard: their plants have the same difficulty (plants.h), that of which the bench has most; of two that it has
// as many of, the harder. Kinds of fault take turns. Where a bench has fewer plants than hunts are wanted, they come again in another order.
// Pure; safe from any thread; stoppable.

#include "core/base/result.h"
#include "core/hunt/hidden_slip.h"
#include "core/hunt/plants.h"

#include <cstdint>
#include <memory>
#include <vector>

namespace tiepoint {

struct HuntSet {
    std::vector<Plant> hunts;
    int readings = 0;   ///< the difficulty of each
    int different = 0;  ///< how many of them are different
    int plants = 0;     ///< how many slips of any difficulty the bench could have
};

/// Fails where nothing can be hunted on the bench, and says why.
Result<HuntSet> makeHunts(std::shared_ptr<const Bench> target, int count, std::uint64_t seed);

/// The bench of a hunt: with the slip, which it hides; nothing of what is found is told; with a meter at hand, its black tip in minus.
Bench huntBench(const HuntGround& ground, const Plant& plant);

}  // namespace tiepoint
