// The drawing of a circuit as a graph. Vertices are
//
//   nets           on which at least two terminals meet
//   parts          coloured by kind, values and what is broken in them
//   elements       of a part's model, coloured by their law, their figures and what opens and closes them; of each terminal an edge
//   inner nodes    of a model
//   positions      of a part's switches on which elements depend, coloured by whether they are taken
//   ends of chains where the order inside a chain is free: all its parts then lie between its two ends, side by side, each the way round
//                  that it has along the chain
//
// and edges join a part with all that is its own, and an element with its nodes. The edges of an element that works either way are alike, so
// that a resistor's ends, the pairs of a button or the throws of a slide switch can be exchanged as far as the model allows, and no further:
// interchangeable ends are automorphisms of the model, and nobody lists them. A slide switch turned round with its slide on the other side,
// or a potentiometer turned round and back, is the same circuit for the same reason. A terminal that no element touches hangs on the part
// itself, under its name.
//
// In the exact case figures are mixed into colours: values as they are, figures of elements (which were reckoned) to twelve digits. Within a
// tolerance "alike" isn't transitive, and no colour can stand for it; then figures are kept beside the vertices, and compared pair by pair.

#include "core/netlist/circuit_graph.h"

#include "core/bench/resolve.h"
#include "core/netlist/digest.h"
#include "core/netlist/series.h"
#include "core/netlist/symmetry.h"

#include <algorithm>
#include <bit>
#include <utility>

namespace tiepoint {
namespace {

enum VertexKind : std::uint64_t {
    kNetVertex,
    kChainEndVertex,
    kPartVertex,
    kElementVertex,
    kInnerVertex,
    kPositionVertex
};
enum EdgeRole : std::uint64_t { kOwns, kEither, kFrom, kTo, kDependsOn, kChainsTo, kCloses, kNamed, kBetween };

/// A vertex in the making.
struct Drawn {
    std::uint64_t colour;
    std::vector<double> figures = {};
};

class GraphDrawer {
public:
    GraphDrawer(const Netlist& netlist, const Likeness& likeness)
        : netlist_(netlist),
          likeness_(likeness),
          wiring_(wiringOf(netlist, likeness.unusedParts)) {}

    CircuitGraph run() {
        vertexOfTerminal_.assign(wiring_.terminals.netOf.size(), -1);
        const auto chains = likeness_.seriesOrder ? std::vector<Chain>{} : seriesChains(netlist_, wiring_);
        drawNets(netsInside(chains));
        for (const Chain& chain : chains) drawChain(chain);
        graph_.partVertices.assign(netlist_.parts.size(), -1);
        for (std::size_t part = 0; part < netlist_.parts.size(); ++part) {
            if (wiring_.counts[part]) drawPart(static_cast<int>(part));
        }
        layArcs();
        return std::move(graph_);
    }

private:
    int addVertex(Drawn drawn) {
        graph_.colours.push_back(drawn.colour);
        graph_.firstFigure.push_back(static_cast<int>(graph_.figures.size()));
        graph_.figures.insert(graph_.figures.end(), drawn.figures.begin(), drawn.figures.end());
        return graph_.size() - 1;
    }
    void addEdge(int a, int b, std::uint64_t role) { edges_.push_back({a, b, role}); }

    /// By net: whether it stands between the parts of a chain.
    std::vector<char> netsInside(const std::vector<Chain>& chains) const {
        const Terminals& terminals = wiring_.terminals;
        std::vector<char> inside(netlist_.nets.size(), 0);
        const auto mark = [&](int net, char is) {
            if (net >= 0) inside[net] = is;
        };
        for (const Chain& chain : chains) {
            for (const ChainedPart& link : chain.parts) {
                mark(terminals.netOf[terminals.firstOfPart[link.part]], 1);
                mark(terminals.netOf[terminals.firstOfPart[link.part] + 1], 1);
            }
            mark(chain.firstNet, 0);
            mark(chain.lastNet, 0);
        }
        return inside;
    }

    void drawNets(const std::vector<char>& inside) {
        const Terminals& terminals = wiring_.terminals;
        std::vector<int> ofRoot(netlist_.nets.size(), -1);
        for (std::size_t t = 0; t < terminals.netOf.size(); ++t) {
            const int net = terminals.netOf[t];
            if (net < 0 || inside[net] || wiring_.terminalsOn[net] < 2) continue;
            if (ofRoot[net] < 0) ofRoot[net] = addVertex({mixed(kNetVertex, 0)});
            vertexOfTerminal_[t] = ofRoot[net];
        }
        for (const int root : terminals.rootOfNet) graph_.netVertices.push_back(ofRoot[root]);
    }

    void drawChain(const Chain& chain) {
        const int first = addVertex({mixed(kChainEndVertex, 0)}), last = addVertex({mixed(kChainEndVertex, 0)});
        if (chain.ring) addEdge(first, last, kCloses);
        for (const auto& [end, net] : {std::pair(first, chain.firstNet), std::pair(last, chain.lastNet)}) {
            if (net >= 0 && graph_.netVertices[net] >= 0) addEdge(end, graph_.netVertices[net], kChainsTo);
        }
        for (const auto& [part, turned] : chain.parts) {
            const int terminal = wiring_.terminals.firstOfPart[part];
            vertexOfTerminal_[terminal] = turned ? last : first;
            vertexOfTerminal_[terminal + 1] = turned ? first : last;
        }
    }

    void drawPart(int part) {
        const Part& drawn = netlist_.parts[part];
        const int vertex = graph_.partVertices[part] = addVertex(look(drawn));
        touched_.assign(static_cast<std::size_t>(wiring_.terminals.countOf(part)), 0);
        innerNodes_.clear();
        positions_.clear();
        const bool whole = isOddTwoPole(*drawn.kind);
        for (const ElementSpec& spec : drawn.kind->model)
            if (!whole) drawElement(part, spec);
        for (std::size_t lead = 0; lead < drawn.kind->leads.size(); ++lead) {
            const int terminal = wiring_.terminals.ofLead[part][lead];
            if (std::exchange(touched_[terminal - wiring_.terminals.firstOfPart[part]], 1)) continue;
            if (const int net = vertexOfTerminal_[terminal]; net >= 0)
                addEdge(vertex, net, whole ? kEither : mixed(kNamed, digestOf(drawn.kind->leads[lead].name)));
        }
    }

    void drawElement(int part, const ElementSpec& spec) {
        const Part& owner = netlist_.parts[part];
        const int vertex = addVertex(look(spec, owner));
        addEdge(graph_.partVertices[part], vertex, kOwns);
        const bool either = mayBeExchanged(spec, *owner.kind);
        for (std::size_t terminal = 0; terminal < spec.between.size(); ++terminal) {
            const int node = nodeOf(part, spec.between[terminal]);
            if (node >= 0) addEdge(vertex, node, either ? kEither : roleOf(terminal, spec.between.size()));
        }
        if (!spec.whenState.empty()) addEdge(vertex, positionOf(part, spec), kDependsOn);
    }

    static std::uint64_t roleOf(std::size_t terminal, std::size_t count) {
        if (terminal == 0) return kFrom;
        return terminal + 1 == count ? kTo : mixed(kBetween, terminal);
    }

    /// The vertex of a lead or inner node of the model; -1 where the lead joins nothing.
    int nodeOf(int part, const std::string& name) {
        const int lead = netlist_.parts[part].kind->leadIndex(name);
        if (lead < 0) return innerNode(part, name);
        const int terminal = wiring_.terminals.ofLead[part][lead];
        touched_[terminal - wiring_.terminals.firstOfPart[part]] = 1;
        return vertexOfTerminal_[terminal];
    }

    int innerNode(int part, const std::string& name) {
        for (const auto& [known, vertex] : innerNodes_) {
            if (known == name) return vertex;
        }
        const int vertex = addVertex({mixed(kInnerVertex, 0)});
        addEdge(graph_.partVertices[part], vertex, kOwns);
        innerNodes_.emplace_back(name, vertex);
        return vertex;
    }

    int positionOf(int part, const ElementSpec& spec) {
        for (const auto& [known, vertex] : positions_) {
            if (known->whenState == spec.whenState && known->whenChoice == spec.whenChoice) return vertex;
        }
        const std::uint64_t taken = likeness_.states ? (isTaken(netlist_.parts[part], spec) ? 2 : 1) : 0;
        const int vertex = addVertex({mixed(kPositionVertex, taken)});
        addEdge(graph_.partVertices[part], vertex, kOwns);
        positions_.emplace_back(&spec, vertex);
        return vertex;
    }

    static bool isTaken(const Part& part, const ElementSpec& spec) {
        const int index = part.kind->stateIndex(spec.whenState);
        const double state = part.stateValue(index);
        if (spec.whenChoice.empty()) return state != 0;
        return part.kind->state[index].choices[static_cast<std::size_t>(state)].name == spec.whenChoice;
    }

    /// A setting of a part, as a colour or a figure.
    void add(const ValueSpec& spec, double value, Drawn& drawn) const {
        drawn.colour = mixed(drawn.colour, digestOf(spec.name));
        const bool measured = spec.type == ValueType::Number && !spec.integer;
        if (measured && likeness_.tolerance > 0) {
            drawn.figures.push_back(value);
        } else {
            drawn.colour = mixed(drawn.colour, std::bit_cast<std::uint64_t>(value + 0.0));  // no minus before 0
        }
    }

    Drawn look(const Part& part) const {
        const PartKind& kind = *part.kind;
        Drawn drawn{mixed(kPartVertex, digestOf(kind.name))};
        if (part.condition != Condition::Sound)
            drawn.colour = mixed(drawn.colour, static_cast<std::uint64_t>(part.condition));
        for (int i = 0; i < std::ssize(kind.values); ++i) {
            if (valueCounts(kind.values[i], kind, likeness_)) add(kind.values[i], part.value(i), drawn);
        }
        if (!likeness_.states) return drawn;
        for (int i = 0; i < std::ssize(kind.state); ++i) {
            if (!showsInModel(kind.state[i], kind)) add(kind.state[i], part.stateValue(i), drawn);
        }
        return drawn;
    }

    Drawn look(const ElementSpec& spec, const Part& owner) const {
        Drawn drawn{mixed(kElementVertex, digestOf(spec.element))};
        drawn.colour = mixed(mixed(drawn.colour, digestOf(spec.reads)), spec.whenHeld ? 1 : 0);
        if (likeness_.values == ValuesCounted::None) return drawn;
        for (const auto& [name, parameter] : spec.parameters) {
            if (!likeness_.states && followsState(parameter, *owner.kind)) continue;
            drawn.colour = mixed(drawn.colour, digestOf(name));
            const double figure = resolve(parameter, owner);
            if (likeness_.tolerance > 0) {
                drawn.figures.push_back(figure);
            } else {
                drawn.colour = mixed(drawn.colour, digestOf(figure));
            }
        }
        return drawn;
    }

    void layArcs() {
        graph_.firstFigure.push_back(static_cast<int>(graph_.figures.size()));
        graph_.firstArc.assign(static_cast<std::size_t>(graph_.size()) + 1, 0);
        for (const Edge& edge : edges_) {
            ++graph_.firstArc[edge.a + 1];
            ++graph_.firstArc[edge.b + 1];
        }
        for (int v = 0; v < graph_.size(); ++v) graph_.firstArc[v + 1] += graph_.firstArc[v];
        graph_.arcs.resize(2 * edges_.size());
        std::vector<int> next(graph_.firstArc.begin(), graph_.firstArc.end() - 1);
        for (const Edge& edge : edges_) {
            graph_.arcs[next[edge.a]++] = {edge.b, edge.role};
            graph_.arcs[next[edge.b]++] = {edge.a, edge.role};
        }
    }

    struct Edge {
        int a, b;
        std::uint64_t role;
    };

    const Netlist& netlist_;
    const Likeness& likeness_;
    Wiring wiring_;
    CircuitGraph graph_;
    std::vector<Edge> edges_;
    std::vector<int> vertexOfTerminal_;  // by terminal; -1: it joins nothing
    std::vector<char> touched_;          // by terminal of the part being drawn: an element is on it
    std::vector<std::pair<std::string, int>> innerNodes_;
    std::vector<std::pair<const ElementSpec*, int>> positions_;
};

}  // namespace

CircuitGraph graphOf(const Netlist& netlist, const Likeness& likeness) { return GraphDrawer(netlist, likeness).run(); }

}  // namespace tiepoint
