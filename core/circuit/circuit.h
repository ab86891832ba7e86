#pragma once
// The compiled circuit: nodes by number and flat lists of branches, nothing else. It knows no board, no part and no limit of
// voltage; the layers above give it meaning.
//
// Every element has one number, in the order of adding, terminals at nodes, and paths along which current runs through it. An element
// is a branch of one of the laws of laws.h, or one of the linear special cases: a conductor or a supply. These two stay apart because
// nothing of them changes from step to step, and because the order of elimination follows from where the supplies are.
// Currents count from `from` to `to` of a path through the element. Units: volt, ampere, ohm. Plain values; not shared while being
// built.

#include "core/circuit/laws.h"

#include <limits>
#include <vector>

namespace tiepoint {

/// Resistances and switch contacts.
struct ConductorBranch {
    int element, from, to;
    double siemens;
};

/// An electromotive force from `to` (minus) to `from` (plus) with a series resistance, while |current| <= limit, sourcing or sinking;
/// beyond it a constant-current source.
struct SupplyBranch {
    int element, from, to;
    double emfVolt;
    double seriesOhm;    ///< 0: ideal
    double limitAmpere;  ///< infinity: none
};

/// An element that follows a law.
template <class Law>
struct LawBranch {
    int element;
    std::array<int, Law::kTerminals> nodes;
    Law law;
    int touch;  ///< where its touch begins, a voltage for each port
    int bits;   ///< where its bits stand
    int store;  ///< where its stores begin: its charges, then its fluxes
};
template <class Law>
using LawBranches = std::vector<LawBranch<Law>>;

/// The voltages of a branch's ports.
template <class Law>
typename Law::Volts voltsAcross(const LawBranch<Law>& branch, const std::vector<double>& nodeVolt) {
    typename Law::Volts volts{};
    for (int port = 0; port < Law::kPorts; ++port)
        volts[port] =
            nodeVolt[branch.nodes[Law::kPortEnds[port].from]] - nodeVolt[branch.nodes[Law::kPortEnds[port].to]];
    return volts;
}

/// A way through an element: nodes, and the terminals there.
struct Path {
    int element, from, to;
    int fromTerminal, toTerminal;
};

struct Circuit {
    int nodeCount = 0;
    std::vector<ConductorBranch> conductors;
    std::vector<SupplyBranch> supplies;
    Laws::For<LawBranches> laws;

    std::vector<int> firstTerminal{0};  ///< by element, with one entry more at the end
    std::vector<int> nodeOfTerminal;
    std::vector<int> firstPath{0};  ///< by element, with one entry more at the end
    std::vector<Path> paths;
    int touchCount = 0;  ///< voltages of the laws' own variables
    int bitsCount = 0;   ///< branches with bits
    int storeCount = 0;  ///< charges and fluxes

    int elementCount() const { return static_cast<int>(firstTerminal.size()) - 1; }
    int addNode() { return nodeCount++; }

    template <class Law>
    const LawBranches<Law>& branches() const {
        return std::get<LawBranches<Law>>(laws);
    }
    std::span<const int> nodesOf(int element) const {
        return std::span(nodeOfTerminal).subspan(firstTerminal[element], terminalCount(element));
    }
    std::size_t terminalCount(int element) const {
        return static_cast<std::size_t>(firstTerminal[element + 1] - firstTerminal[element]);
    }

    /// Each adds one element and returns its number.
    int addConductor(int from, int to, double ohm) {
        conductors.push_back({elementCount(), from, to, 1 / ohm});
        return addElement(std::array{from, to}, kOnePath);
    }
    int addSupply(int from, int to, double emfVolt, double seriesOhm = 0,
                  double limitAmpere = std::numeric_limits<double>::infinity()) {
        supplies.push_back({elementCount(), from, to, emfVolt, seriesOhm, limitAmpere});
        return addElement(std::array{from, to}, kOnePath);
    }
    template <class Law>
    int add(const Law& law, const std::array<int, Law::kTerminals>& nodes) {
        std::get<LawBranches<Law>>(laws).push_back({elementCount(), nodes, law, touchCount, bitsCount, storeCount});
        touchCount += Law::kPorts;
        if (Law::kBits > 0) ++bitsCount;
        storeCount += Law::kCharges + Law::kFluxes;
        static constexpr LawWays<Law> kWays = waysOf<Law>();
        return addElement(nodes, std::span(kWays.ends).first(kWays.count));
    }

    /// Puts one terminal of an element at another node.
    void moveTerminal(int element, int terminal, int node) {
        const int at = firstTerminal[element] + terminal;
        nodeOfTerminal[at] = node;
        for (int path = firstPath[element]; path < firstPath[element + 1]; ++path) {
            if (paths[path].fromTerminal == at) paths[path].from = node;
            if (paths[path].toTerminal == at) paths[path].to = node;
        }
        const auto move = [&](auto& branches) {
            for (auto& b : branches)
                if (b.element == element) (terminal == 0 ? b.from : b.to) = node;
        };
        move(conductors);
        move(supplies);
        eachLaw(laws, [&](auto& branches) {
            for (auto& b : branches)
                if (b.element == element) b.nodes[terminal] = node;
        });
    }

private:
    static constexpr std::array<TerminalPair, 1> kOnePath{{{0, 1}}};

    int addElement(std::span<const int> nodes, std::span<const TerminalPair> ways) {
        const int element = elementCount(), first = firstTerminal.back();
        nodeOfTerminal.insert(nodeOfTerminal.end(), nodes.begin(), nodes.end());
        firstTerminal.push_back(static_cast<int>(nodeOfTerminal.size()));
        for (const TerminalPair& way : ways)
            paths.push_back({element, nodes[way.from], nodes[way.to], first + way.from, first + way.to});
        firstPath.push_back(static_cast<int>(paths.size()));
        return element;
    }
};

}  // namespace tiepoint
