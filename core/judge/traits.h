#pragma once
// What speaks for a bench: counts of what it does and how it is built, of which none is a demand. Neighbouring benches, that differ by a
// slip, are compared by them (worth.h). Pure functions; safe from any thread.

#include "core/judge/stage.h"

#include <array>
#include <cstdint>
#include <string_view>
#include <vector>

namespace tiepoint {

/// One line a trait; names for those who look at how benches are compared.
enum class Trait {
    // Gains: what a bench does. A mend may lower none of them.
    LitLights,   ///< lights that shine somewhere
    Brightness,  ///< of each light the most, 0..1, together
    Throws,      ///< switches that change something somewhere
    Contacts,    ///< contacts through which current runs somewhere
    Knobs,       ///< knobs that change something
    Patterns,    ///< logarithm of how many ways of shining there are
    Carriers,    ///< other parts through which current runs somewhere
    Meters,      ///< meters with a figure that isn't nothing
    Supplies,    ///< supplies that give current
    // Laws: what is broken, as counts or how far.
    Unsolved,     ///< share of positions without a solution
    Over,         ///< parts over a maximum somewhere
    OverFar,      ///< how far, in decades
    Sagging,      ///< share of its voltage that a supply loses, the worst position of each
    Limiting,     ///< supplies at their limit somewhere
    Absorbing,    ///< supplies into which current runs
    Backwards,    ///< junctions that block somewhere more than half a volt and never conduct
    BadReadings,  ///< meters that read below zero, or have no figure
    // Print and order: they only rank.
    Misprinted,    ///< rails whose print says the contrary
    Colours,       ///< jumpers whose colour says the contrary
    LooseLegs,     ///< legs that meet nothing, of parts whose others do
    LooseEnds,     ///< ends of jumpers that meet nothing
    Parked,        ///< parts that meet nothing at all
    Bypassed,      ///< parts with all their legs in one net
    IdleJumpers,   ///< jumpers between what is joined already
    EverLit,       ///< lights that no switch puts out though there are some
    LightCurrent,  ///< how far lights are from their usual current, in decades
    Sharing,       ///< lights side by side without a resistor each
    UsualValues,   ///< resistors with a value that every kit has
    OddValues,     ///< different values among the resistors
    OddLights,     ///< different brightnesses among lights of one kind
    UsualVolts,    ///< supplies with a usual voltage
    RailTies,      ///< jumpers that join two rails
    DeadThrows,    ///< positions of a changeover in which it carries nothing, in any position of the others
    Count
};
inline constexpr std::size_t kTraitCount = static_cast<std::size_t>(Trait::Count);

struct Traits {
    std::array<double, kTraitCount> of{};
    double& operator[](Trait trait) { return of[static_cast<std::size_t>(trait)]; }
    double operator[](Trait trait) const { return of[static_cast<std::size_t>(trait)]; }
};

std::string_view nameOf(Trait trait);

/// What is seen of one bench in all its positions.
struct Observed {
    Traits traits;
    std::uint64_t show =
        0;  ///< a digest of what the eye and the meters see; equal where they can't tell two benches apart
    std::vector<double> mostAmpere;  ///< by part, in the position where it is most
    std::vector<char> lit;           ///< by part: a light that shines somewhere
    std::vector<char> works;         ///< by part: a switch or knob that changes something, a meter with a figure
    std::vector<int> amiss;          ///< parts that don't do what such a part is for, the gravest first
};

Observed observe(const Stage& stage, const Play& play);

}  // namespace tiepoint
