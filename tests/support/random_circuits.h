#pragma once
// Random circuits without places, of two sorts: nets at random between parts at random, as nobody would build them, and trees of series and
// parallel parts behind a supply, as lessons do. Knows nothing of who draws or places them.

#include "core/netlist/netlist.h"

#include <fmt/format.h>

#include <random>
#include <set>
#include <string>
#include <vector>

namespace tiepoint::test {

class RandomCircuits {
public:
    /// Of all kinds but these, by name.
    explicit RandomCircuits(unsigned seed, const std::set<std::string>& without = {}) : random_(seed) {
        for (const PartKind& kind : catalogue())
            if (!without.contains(kind.name)) kinds_.push_back(&kind);
    }

    /// Any kinds, any nets, some leads hanging.
    Netlist wild(int parts) {
        Netlist circuit;
        circuit.title = "Wild";
        const int nets = 2 + below(std::max(1, parts));
        for (int net = 0; net < nets; ++net) circuit.nets.push_back(fmt::format("n{}", net));
        for (int part = 0; part < parts; ++part) {
            const PartKind& kind = *kinds_[static_cast<std::size_t>(below(static_cast<int>(kinds_.size())))];
            const int index = addPart(circuit, makePart(kind, fmt::format("X{}", part + 1)));
            for (int& net : circuit.leads[static_cast<std::size_t>(index)]) net = below(12) == 0 ? -1 : below(nets);
        }
        renumberNets(circuit);
        return circuit;
    }

    /// A supply, and behind it series and parallel ways of resistors, LEDs, switches and lamps.
    Netlist tame(int parts) {
        Netlist circuit;
        circuit.title = "Tame";
        circuit.nets = {"plus", "minus"};
        const int supply = addPart(circuit, makePart(*findKind("bench-supply"), "PS1"));
        circuit.leads[static_cast<std::size_t>(supply)] = {0, 1};
        branch(circuit, 0, 1, std::max(1, parts - 1));
        renumberNets(circuit);
        return circuit;
    }

    int below(int limit) { return std::uniform_int_distribution<int>(0, limit - 1)(random_); }

private:
    void branch(Netlist& circuit, int from, int to, int parts) {
        if (parts == 1) {
            single(circuit, from, to);
            return;
        }
        const int first = 1 + below(parts - 1);
        if (below(2) == 0) {
            const int middle = static_cast<int>(circuit.nets.size());
            circuit.nets.push_back(fmt::format("n{}", middle));
            branch(circuit, from, middle, first);
            branch(circuit, middle, to, parts - first);
        } else {
            branch(circuit, from, to, first);
            branch(circuit, from, to, parts - first);
        }
    }

    void single(Netlist& circuit, int from, int to) {
        constexpr const char* kKinds[] = {"resistor", "led",   "push-button", "lamp",
                                          "toggle",   "diode", "resistor",    "led"};
        const PartKind& kind = *findKind(kKinds[below(8)]);
        const int number = static_cast<int>(circuit.parts.size());
        const int index = addPart(circuit, makePart(kind, fmt::format("{}{}", kind.prefix, number)));
        std::vector<int>& leads = circuit.leads[static_cast<std::size_t>(index)];
        leads.front() = from;
        leads[leads.size() == 4 ? 2 : 1] = to;
    }

    std::mt19937 random_;
    std::vector<const PartKind*> kinds_;
};

}  // namespace tiepoint::test
