#pragma once
// Laws that light or warmth moves. Such a law has
//
//   bool surround(const Surroundings&)   takes what surrounds its part from now on; whether that changes anything
//
// and keeps to it until it is told otherwise; until it is told at all, to the usual surroundings. It isn't an unknown of the circuit and
// no store: whoever solves tells the circuit before it begins.
// Thread rule: pure functions of the circuit that is given.

#include "core/circuit/circuit.h"
#include "core/instant/surroundings.h"

#include <span>

namespace tiepoint {

template <class Law>
concept IsSurrounded = requires(Law law, const Surroundings& surroundings) {
    { law.surround(surroundings) } -> std::same_as<bool>;
};

/// Tells every element what surrounds it (by element of the circuit; those beyond the list keep to what they know). Whether anything
/// changed.
inline bool surround(Circuit& circuit, std::span<const Surroundings> byElement) {
    bool changed = false;
    eachLaw(circuit.laws, [&]<class Law>(LawBranches<Law>& branches) {
        if constexpr (IsSurrounded<Law>) {
            for (LawBranch<Law>& b : branches) {
                const auto element = static_cast<std::size_t>(b.element);
                if (element < byElement.size() && b.law.surround(byElement[element])) changed = true;
            }
        }
    });
    return changed;
}

}  // namespace tiepoint
