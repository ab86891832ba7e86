#pragma once
// Elements: what the models of part kinds are made of. Each turns resolved figures into one branch of the compiled circuit. An element
// that follows a law is one header with the law (law.h) and a line in laws.h; the table takes it from there. The linear special cases
// have a file each (resistance.cpp, ...) and a line in the table of element.cpp.
// Thread rule: constant data.

#include "core/bench/bench.h"
#include "core/circuit/circuit.h"

#include <span>
#include <string_view>
#include <vector>

namespace tiepoint {

struct ElementKind : ElementDescription {
    /// Adds the element between nodes, by terminal; figures in the order of the parameters. Returns its number.
    int (*add)(Circuit& circuit, std::span<const int> nodes, std::span<const double> figures);
    /// Whether time changes it by itself: it stores something, has bits, or feeds back.
    bool moves = false;
    /// Whether it drives current by itself, out of its first terminal and back into its last.
    bool drives = false;
};

std::span<const ElementKind* const> elementKinds();
/// The element of that name, or null.
const ElementKind* findElement(std::string_view name);

/// Whether an element drives a circuit by itself, out of its first terminal and back into its last: a supply, and what light drives in a
/// part that is a source. (What it drives in another, such as a phototransistor, comes to nothing without one.)
bool drives(const PartKind& kind, const ElementSpec& spec);

/// Whether time changes anything about a bench by itself.
bool movesByItself(const Bench& bench);

/// What a part's model gives an element, by parameter, resolved for the part; the fallback of what it doesn't give.
std::vector<double> figuresOf(const ElementKind& element, const ElementSpec& spec, const Part& part);

extern const ElementKind kResistanceElement;
extern const ElementKind kSupplyElement;
extern const ElementKind kContactElement;
inline constexpr std::size_t kContactBounce = 1;  ///< the place among its figures of how long it bounces, seconds

/// The element of a law.
template <class Law>
inline constexpr ElementKind kElementOf{
    Law::kElement,
    [](Circuit& circuit, std::span<const int> nodes, std::span<const double> figures) {
        std::array<int, Law::kTerminals> each{};
        for (int terminal = 0; terminal < Law::kTerminals; ++terminal) each[terminal] = nodes[terminal];
        return circuit.add(Law(figures), each);
    },
    kMovesByItself<Law>, std::is_same_v<Law, PhotocurrentLaw>};
inline constexpr const ElementKind& kJunctionElement = kElementOf<JunctionLaw>;

}  // namespace tiepoint
