#pragma once
// Elements: what the models of part kinds are made of. Each turns resolved figures into one branch of the compiled circuit. An element
// that follows a law is one header with the law (law.h) and a line in laws.h; the table takes it from there. The linear special cases
// have a file each (resistance.cpp, ...) and a line in the table of element.cpp.
// Thread rule: constant data.

#include "core/bench/bench.h"
#include "core/circuit/circuit.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <span>
#include <string_view>
#include <vector>

namespace tiepoint {

/// Two terminals that an element joins, and the least resistance that it has between them.
struct JoinedTerminals {
    int from, to;
    double ohm;
};

struct ElementKind : ElementDescription {
    /// Adds the element between nodes, by terminal; figures in the order of the parameters. Returns its number.
    int (*add)(Circuit& circuit, std::span<const int> nodes, std::span<const double> figures);
    /// Whether time changes it by itself: it stores something, has bits, or feeds back.
    bool moves = false;
    /// Whether it drives current by itself, out of its first terminal and back into its last.
    bool drives = false;
    /// Which terminals it joins for a steady current; null: its first and its last, as a conductor or a source does. `told` is what it tells of
    /// itself: a contact that an armature moves joins what it stands at.
    void (*joins)(std::span<const double> figures, double told, std::vector<JoinedTerminals>& joined) = nullptr;
};

std::span<const ElementKind* const> elementKinds();
/// The element of that name, or null.
const ElementKind* findElement(std::string_view name);

/// Whether an element drives a circuit by itself, out of its first terminal and back into its last: a supply, and what light drives in a
/// part that is a source. (What it drives in another, such as a phototransistor, comes to nothing without one.)
bool drives(const PartKind& kind, const ElementSpec& spec);

/// Whether time changes anything about a bench by itself.
bool movesByItself(const Bench& bench);

/// What an element of a part joins as it stands; `told`: what it tells of itself (ElementState).
std::vector<JoinedTerminals> joinedBy(const ElementSpec& spec, const Part& part, double told);

/// What a part's model gives an element, by parameter, resolved for the part; the fallback of what it doesn't give.
std::vector<double> figuresOf(const ElementKind& element, const ElementSpec& spec, const Part& part);

extern const ElementKind kResistanceElement;
extern const ElementKind kSupplyElement;
extern const ElementKind kContactElement;
inline constexpr std::size_t kContactBounce = 1;  ///< the place among its figures of how long it bounces, seconds

/// What a law ties together; of one with bits, what a switch of it doesn't part at present.
template <class Law>
void joinsOf(std::span<const double> figures, double told, std::vector<JoinedTerminals>& joined) {
    constexpr double kPartedSiemens = 1e3 * kJunctionLeakSiemens;
    const unsigned bits = Law::kBits > 0 && told > 0 ? static_cast<unsigned>(told) : 0U;
    const auto tangent = Law(figures).tangentAt({}, bits, kJunctionLeakSiemens);
    for (const TerminalPair& tie : Law::kTies) {
        double most = 0;
        bool isPath = false;
        for (int path = 0; path < Law::kPaths; ++path) {
            if (!(Law::kPathEnds[path] == tie)) continue;
            isPath = true;
            for (int port = 0; port < Law::kPorts; ++port) most = std::max(most, std::abs(tangent.siemens[path][port]));
        }
        if (Law::kBits > 0 && isPath && most < kPartedSiemens) continue;
        const bool isSwitch = Law::kBits > 0 && isPath;  // else where it stands decides, and that is no metal
        joined.push_back({tie.from, tie.to, isSwitch ? 1 / most : std::numeric_limits<double>::infinity()});
    }
}

/// The element of a law.
template <class Law>
inline constexpr ElementKind kElementOf{
    Law::kElement,
    [](Circuit& circuit, std::span<const int> nodes, std::span<const double> figures) {
        std::array<int, Law::kTerminals> each{};
        for (int terminal = 0; terminal < Law::kTerminals; ++terminal) each[terminal] = nodes[terminal];
        return circuit.add(Law(figures), each);
    },
    kMovesByItself<Law>, std::is_same_v<Law, PhotocurrentLaw>, &joinsOf<Law>};
inline constexpr const ElementKind& kJunctionElement = kElementOf<JunctionLaw>;

}  // namespace tiepoint
