#include "core/judge/worth.h"

#include <algorithm>
#include <cmath>
#include <iterator>

namespace tiepoint {
namespace {

struct Weighed {
    double more, less;  ///< of one more, and of one less
};
/// By trait.
constexpr std::array<Weighed, kTraitCount> kWeights = {{
    {2.0, -1.0},  // LitLights
    {4.0, -0.9},  // Brightness
    {0.0, 0.0},   // Throws
    {2.0, 0.0},   // Contacts
    {1.0, 0.0},   // Knobs
    {1.1, -0.8},  // Patterns
    {2.3, 0.0},   // Carriers
    {2.3, -0.3},  // Meters
    {0.7, 0.0},   // Supplies
    {0.0, 3.0},   // Unsolved
    {0.0, 2.6},   // Over
    {0.0, 0.6},   // OverFar
    {0.0, 1.0},   // Sagging
    {0.0, 1.1},   // Limiting
    {-0.6, 0.4},  // Absorbing
    {-0.3, 0.7},  // Backwards
    {0.0, 3.0},   // BadReadings
    {0.0, 2.0},   // Misprinted
    {-0.3, 0.3},  // Colours
    {-1.4, 3.1},  // LooseLegs
    {1.4, 2.7},   // LooseEnds
    {-1.0, 0.2},  // Parked
    {-0.3, 1.3},  // Bypassed
    {-0.2, 0.8},  // IdleJumpers
    {-0.2, 0.6},  // EverLit
    {-1.8, 4.2},  // LightCurrent
    {-0.3, 0.3},  // Sharing
    {1.6, -1.0},  // UsualValues
    {-0.4, 0.7},  // OddValues
    {-1.1, 0.4},  // OddLights
    {0.3, -0.8},  // UsualVolts
    {0.0, -0.6},  // RailTies
    {0.8, -0.3},  // DeadThrows
}};
constexpr double kOfCommonness = 1.2, kCommonest = 20, kOfWays = 1.0;

}  // namespace

double worthOf(const Traits& before, const Traits& after) {
    double worth = 0;
    for (std::size_t i = 0; i < kTraitCount; ++i) {
        const double more = after.of[i] - before.of[i];
        worth += more > 0 ? kWeights[i].more * more : kWeights[i].less * -more;
    }
    return worth;
}

double worthOfSlip(double weight, double ways) {
    return kOfCommonness * std::log(weight / kCommonest) - kOfWays * std::log(ways);
}

bool lowersAGain(const Traits& before, const Traits& after) {
    constexpr double kRounding = 1e-6;
    constexpr Trait kGains[] = {Trait::LitLights, Trait::Throws, Trait::Contacts, Trait::Knobs, Trait::Carriers};
    constexpr Trait kLaws[] = {Trait::Unsolved, Trait::Over,       Trait::OverFar,
                               Trait::Limiting, Trait::Misprinted, Trait::BadReadings};
    for (const Trait trait : kGains)
        if (after[trait] < before[trait] - kRounding) return true;
    for (const Trait trait : kLaws)
        if (after[trait] > before[trait] + kRounding) return true;
    return false;
}

bool bringsWork(const Traits& before, const Traits& after) {
    constexpr Trait kWorks[] = {Trait::LitLights, Trait::Throws,   Trait::Contacts,
                                Trait::Knobs,     Trait::Patterns, Trait::Meters};
    constexpr Trait kLaws[] = {Trait::Unsolved,  Trait::Over,       Trait::Sagging,    Trait::Limiting,
                               Trait::Absorbing, Trait::Misprinted, Trait::BadReadings};
    constexpr double kRounding = 1e-6;
    return std::ranges::any_of(kWorks, [&](Trait trait) { return after[trait] > before[trait] + kRounding; }) ||
           std::ranges::any_of(kLaws, [&](Trait trait) { return after[trait] < before[trait] - kRounding; });
}

double toldFrom(const Traits& before, const Traits& after) {
    constexpr double kOfDarkLight = -2, kOfUnlike = 1.4;
    if (after[Trait::LitLights] > before[Trait::LitLights]) return kOfDarkLight;
    if (!onlyDims(before, after)) return kToldWorth;
    return after[Trait::OddLights] < before[Trait::OddLights] ? kOfUnlike : kDimWorth;
}

bool onlyDims(const Traits& before, const Traits& after) {
    constexpr Trait kOfLight[] = {Trait::Brightness,  Trait::LightCurrent, Trait::OddLights, Trait::OddValues,
                                  Trait::UsualValues, Trait::UsualVolts,   Trait::Sagging,   Trait::Patterns};
    constexpr double kRounding = 1e-6;
    for (std::size_t i = 0; i < kTraitCount; ++i) {
        const bool ofLight = std::ranges::find(kOfLight, static_cast<Trait>(i)) != std::end(kOfLight);
        if (!ofLight && std::abs(after.of[i] - before.of[i]) > kRounding) return false;
    }
    return true;
}

}  // namespace tiepoint
