#pragma once
// From a layout to a compiled circuit. Parts are taken in natural order of their ids and nodes are numbered as they are met, so the
// circuit, and every digit of its solution, depends neither on the order of parts in the file nor on where they lie.
// A pure function; safe from any thread.

#include "core/circuit/circuit.h"
#include "core/instant/inputs.h"
#include "core/nets/layout.h"

#include <string>
#include <utility>
#include <vector>

namespace tiepoint {

/// One element of the circuit and where it comes from.
struct CompiledElement {
    int part = 0;                                           ///< part index
    int spec = 0;                                           ///< index into the kind's model
    std::vector<std::pair<std::string, double>> constants;  ///< resolved parameters by name
};

struct CompiledCircuit {
    Circuit circuit;
    std::vector<CompiledElement> elements;  ///< by element of the circuit
    std::vector<int>
        leadOfTerminal;  ///< by terminal of the circuit: lead of the layout (the first of a joined group), or -1
    std::vector<int> nodeOfNet;          ///< by net: node, or -1 where no element ends
    std::vector<int> suppliesPluggedIn;  ///< elements of supplies whose minus is plugged in, in natural order of ids
    int reference = -1;  ///< node at 0 V where none of them is on and in a loop: the minus of the first; -1 without one
};

CompiledCircuit compile(const Layout& layout);

/// What surrounds each element where its part stands, for `surround` of surrounded.h.
std::vector<Surroundings> surroundingsOf(const Bench& bench, std::span<const CompiledElement> elements,
                                         const Inputs& inputs);
/// The same into a list that is there already.
void findSurroundings(const Bench& bench, std::span<const CompiledElement> elements, const Inputs& inputs,
                      std::vector<Surroundings>& found);

/// Whether a part has an element at all: of one that is only there with one choice of a value, whether it has that.
bool isOf(const Part& part, const ElementSpec& spec);

/// Whether an element is there: a contact while it is closed, a supply while it is on, anything else always; none of a broken part.
bool isPresent(const Part& part, const ElementSpec& spec, const Inputs& inputs);

}  // namespace tiepoint
