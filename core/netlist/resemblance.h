#pragma once
// How much the parts and nets of two circuits resemble each other by what they are and by what they are joined to.

#include "core/base/grid.h"
#include "core/netlist/exchanges.h"
#include "core/netlist/series.h"

#include <map>
#include <vector>

namespace tiepoint {

/// One of two circuits, with what is asked of it again and again. Borrows the netlist.
struct CircuitSide {
    explicit CircuitSide(const Netlist& circuit, const Likeness& likeness);

    struct Contact {
        int part, slot;  ///< which of its terminals
    };
    const Netlist& netlist;
    Wiring wiring;
    std::vector<int> parts;                                ///< those that count
    std::vector<std::vector<int>> netOf;                   ///< by part, by slot: the net, or -1 where it joins nothing
    std::vector<std::vector<Contact>> contacts;            ///< by net
    std::vector<std::vector<std::vector<int>>> exchanges;  ///< by part

    int netCount() const { return static_cast<int>(contacts.size()); }
};

/// Settings of two parts of one kind that differ as far as they count.
struct SettingsApart {
    std::vector<int> values, states;  ///< indices as in the kind
    int count() const { return static_cast<int>(values.size() + states.size()); }
};

/// Says it of many pairs: which values of a kind count is looked up once. Borrows the likeness.
class SettingsCompared {
public:
    explicit SettingsCompared(const Likeness& likeness) : likeness_(likeness) {}
    SettingsApart operator()(const Part& a, const Part& b);

private:
    const std::vector<int>& countedValues(const PartKind& kind);

    const Likeness& likeness_;
    std::map<const PartKind*, std::vector<int>> counted_;
};

struct Resemblance {
    Grid<double> parts;  ///< by part of the first and of the second, 0 to 1; 0 for other kinds
    Grid<double> nets;
    Grid<int> apart;  ///< by part of the first and of the second, of one kind: how many settings differ
};
Resemblance resemblanceOf(const CircuitSide& first, const CircuitSide& second, const Likeness& likeness);

}  // namespace tiepoint
