// Comparison against a general graph library's isomorphism (Boost's VF2, L. P. Cordella et al.) on thousands of random pairs of benches: the same,
// laid anew, listed otherwise, one value changed, one lead moved, one jumper gone. Circuits and layouts come from the examiner, which knows
// nothing of comparing; what is one circuit is drawn here as a graph of its own: parts that current can't pass left out, the
// parts of a series chain side by side between its ends, and what may be exchanged by hand from a table.

#include "core/compare/comparison.h"
#include "core/edit/placement.h"
#include "examiner/draw_netlist.h"
#include "examiner/placer.h"

#include <boost/graph/adjacency_list.hpp>
#include <boost/graph/vf2_sub_graph_iso.hpp>
#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <set>

namespace tiepoint {
namespace {

using Graph = boost::adjacency_list<boost::vecS, boost::vecS, boost::undirectedS, std::string>;

/// A part as the graph has it: what it is, and its terminals by name and net.
struct PlainPart {
    std::string label;
    std::vector<std::string> names;
    std::vector<int> nets;
};

std::vector<std::string> terminalNames(const std::string& kind) {
    static const std::map<std::string, std::vector<std::string>> table = {
        {"resistor", {"end", "end"}},
        {"lamp", {"end", "end"}},
        {"toggle", {"end", "end"}},
        {"led", {"anode", "cathode"}},
        {"diode", {"anode", "cathode"}},
        {"bench-supply", {"plus", "minus"}},
        {"cells", {"plus", "minus"}},
        {"block-9v", {"plus", "minus"}},
        {"usb-supply", {"plus", "minus", "minus*"}},
        {"push-button", {"pair", "pair*", "pair", "pair*"}},
        {"potentiometer", {"end", "wiper", "end"}},
        {"slide-switch", {"end", "common", "end"}},
    };
    return table.at(kind);
}

std::vector<PlainPart> plainParts(const Bench& bench) {
    const auto layout = buildLayout(std::make_shared<const Bench>(bench));
    std::vector<PlainPart> parts;
    for (int p = 0; p < std::ssize(bench.parts); ++p) {
        const Part& part = bench.parts[p];
        if (part.kind->name == "multimeter") continue;
        PlainPart plain;
        plain.label = part.kind->name;
        for (int i = 0; i < std::ssize(part.values); ++i) {
            const std::string& name = part.kind->values[i].name;
            if (name != "tolerance" && name != "rating") plain.label += " " + name + std::to_string(part.value(i));
        }
        const auto names = terminalNames(part.kind->name);
        for (int lead = 0; lead < std::ssize(names); ++lead) {
            if (names[lead].ends_with("*")) continue;  // one metal with the one before
            plain.names.push_back(names[lead]);
            plain.nets.push_back(layout->netOfLead[layout->leadIndex(p, lead)]);
        }
        parts.push_back(plain);
    }
    return parts;
}

std::map<int, int> usesOf(const std::vector<PlainPart>& parts) {
    std::map<int, int> uses;
    for (const PlainPart& part : parts)
        for (const int net : part.nets) ++uses[net];
    return uses;
}

/// Leaves out what no current can pass.
void prune(std::vector<PlainPart>& parts) {
    for (bool again = true; again;) {
        const auto uses = usesOf(parts);
        const auto before = parts.size();
        std::erase_if(parts, [&](const PlainPart& part) {
            // A terminal leads on where anything else is on its net, be it another terminal of the same part.
            const auto leads =
                std::count_if(part.nets.begin(), part.nets.end(), [&](int net) { return uses.at(net) > 1; });
            return leads < 2;
        });
        again = parts.size() != before;
    }
}

/// Puts the parts of each chain side by side between its ends: the net between two parts of two ends becomes none.
void foldChains(std::vector<PlainPart>& parts) {
    struct Link {
        int part, end;
    };
    std::map<int, std::vector<Link>> on;
    for (int p = 0; p < std::ssize(parts); ++p)
        for (int e = 0; e < std::ssize(parts[p].nets); ++e) on[parts[p].nets[e]].push_back({p, e});
    std::set<int> between;
    for (const auto& [net, links] : on) {
        if (links.size() == 2 && links[0].part != links[1].part && parts[links[0].part].nets.size() == 2 &&
            parts[links[1].part].nets.size() == 2)
            between.insert(net);
    }
    std::vector<char> done(parts.size(), 0);
    int fresh = -1;
    for (int start = 0; start < std::ssize(parts); ++start) {
        if (done[start] || parts[start].nets.size() != 2) continue;
        // To one end of the chain, or once round a ring, then along it.
        const auto next = [&](Link at) -> Link {  // over the net at the other end
            const int net = parts[at.part].nets[1 - at.end];
            if (!between.contains(net)) return {-1, 0};
            const auto& links = on[net];
            return links[0].part == at.part ? links[1] : links[0];
        };
        Link first{start, 0};
        for (Link at{start, 1}; (at = next(at)).part >= 0 && at.part != start;) first = {at.part, 1 - at.end};
        std::vector<Link> chain{first};
        for (Link at = first; (at = next(at)).part >= 0 && at.part != first.part;) chain.push_back(at);
        for (const Link& link : chain) done[link.part] = 1;
        if (chain.size() < 2) continue;
        const bool ring = next(chain.back()).part == first.part && between.contains(parts[first.part].nets[first.end]);
        const int from = ring ? fresh-- : parts[first.part].nets[first.end];
        const int to = ring ? fresh-- : parts[chain.back().part].nets[1 - chain.back().end];
        const int a = fresh--, b = fresh--;
        for (const Link& link : chain) {
            parts[link.part].nets[link.end] = a;
            parts[link.part].nets[1 - link.end] = b;
        }
        parts.push_back({ring ? "ring" : "chain", {"end", "end", "outer", "outer"}, {a, b, from, to}});
        done.push_back(1);
        // Which outer net belongs to which end: an edge part for each, so that ends and nets go together.
        parts.back() = {"tie", {"inner", "outer"}, {a, from}};
        parts.push_back({"tie", {"inner", "outer"}, {b, to}});
        done.push_back(1);
    }
}

Graph graphOf(const Bench& bench) {
    std::vector<PlainPart> parts = plainParts(bench);
    prune(parts);
    foldChains(parts);
    Graph graph;
    std::map<int, std::size_t> netVertex;
    for (const auto& [net, count] : usesOf(parts))
        if (count > 1) netVertex[net] = boost::add_vertex("net", graph);
    for (const PlainPart& part : parts) {
        const auto body = boost::add_vertex(part.label, graph);
        for (std::size_t t = 0; t < part.nets.size(); ++t) {
            const auto terminal = boost::add_vertex(part.names[t], graph);
            boost::add_edge(body, terminal, graph);
            if (netVertex.contains(part.nets[t])) boost::add_edge(terminal, netVertex[part.nets[t]], graph);
        }
    }
    return graph;
}

/// Labels of both graphs refined by those of their neighbours, round after round. An isomorphism keeps them, so that the library's search, which
/// is exponential, has little left to try; it alone decides.
void refine(Graph& a, Graph& b) {
    for (int round = 0; round < 6; ++round) {
        std::map<std::pair<std::string, std::vector<std::string>>, std::string> names;
        const auto refined = [&](const Graph& graph) {
            std::vector<std::string> labels;
            for (const auto vertex : boost::make_iterator_range(boost::vertices(graph))) {
                std::vector<std::string> around;
                for (const auto other : boost::make_iterator_range(boost::adjacent_vertices(vertex, graph)))
                    around.push_back(graph[other]);
                std::sort(around.begin(), around.end());
                const auto [name, isNew] =
                    names.emplace(std::pair(graph[vertex], around), std::to_string(names.size()));
                labels.push_back(name->second);
            }
            return labels;
        };
        const auto first = refined(a), second = refined(b);
        for (std::size_t v = 0; v < first.size(); ++v) a[v] = first[v];
        for (std::size_t v = 0; v < second.size(); ++v) b[v] = second[v];
    }
}

bool isomorphic(const Bench& first, const Bench& second) {
    Graph a = graphOf(first), b = graphOf(second);
    if (boost::num_vertices(a) != boost::num_vertices(b) || boost::num_edges(a) != boost::num_edges(b)) return false;
    refine(a, b);
    std::multiset<std::string> ofA, ofB;
    for (std::size_t v = 0; v < boost::num_vertices(a); ++v) {
        ofA.insert(a[v]);
        ofB.insert(b[v]);
    }
    if (ofA != ofB) return false;
    const auto found = [](const auto&, const auto&) { return false; };
    const auto like = [&](std::size_t v, std::size_t w) { return a[v] == b[w]; };
    return boost::vf2_graph_iso(a, b, found, boost::vertex_order_by_mult(a), boost::vertices_equivalent(like));
}

/// One thing about a bench otherwise; false where chance found nothing to change.
bool change(Bench& bench, int way, examiner::Chance& chance) {
    Part& part = bench.parts[static_cast<std::size_t>(chance.below(static_cast<int>(bench.parts.size())))];
    switch (way) {
        case 0:
            return true;
        case 1:  // listed otherwise, under other names
            chance.shuffle(bench.parts);
            chance.shuffle(bench.jumpers);
            return true;
        case 2: {  // one value
            const int ohm = part.kind->valueIndex("resistance");
            if (ohm < 0) return false;
            part.values[static_cast<std::size_t>(ohm)] = part.value(ohm) * 2;
            return true;
        }
        case 3: {  // one lead, into a strip of something else
            if (part.kind->package->reach == Reach::Rigid || part.leads.empty() || !part.leads[0]) return false;
            const auto lead = static_cast<std::size_t>(chance.below(static_cast<int>(part.leads.size())));
            if (!part.leads[lead]) return false;
            part.leads[lead]->number = 1 + chance.below(17);
            return true;
        }
        default:  // one jumper gone
            if (bench.jumpers.empty()) return false;
            bench.jumpers.erase(bench.jumpers.begin() + chance.below(static_cast<int>(bench.jumpers.size())));
            return true;
    }
}

TEST(ComparisonOracle, AgreesWithAGraphLibraryOnRandomPairs) {
    int pairs = 0, equal = 0, changedAndEqual = 0;
    std::map<int, int> ofWay;
    for (std::uint64_t seed = 1; pairs < 3000; ++seed) {
        examiner::Chance chance(seed * 7919);
        const examiner::Netlist netlist = examiner::drawNetlist(chance, 3 + static_cast<int>(seed % 9));
        examiner::Placer once(chance, netlist);
        const auto first = once.place();
        if (!first) continue;
        const ComparisonTarget target(std::make_shared<const Bench>(*first));
        examiner::Placer anew(chance, netlist);
        const auto moved = anew.place();
        for (int way = 0; moved && way <= 4; ++way) {
            Bench second = way == 1 ? *first : *moved;
            if (!change(second, way, chance)) continue;
            const bool wanted = isomorphic(second, *first);
            const auto comparison = compareBenches(std::make_shared<const Bench>(second), target);
            ASSERT_TRUE(comparison.ok());
            ASSERT_EQ(comparison->sameCircuit, wanted) << "seed " << seed << ", way " << way;
            if (way <= 1) {
                ASSERT_TRUE(wanted) << seed;
            }
            if (wanted) {
                EXPECT_TRUE(comparison->sameBehaviour)
                    << "seed " << seed << ", way " << way << ": "
                    << (comparison->behaviour.empty() ? "" : comparison->behaviour[0].text);
            } else {
                EXPECT_FALSE(comparison->differences.empty()) << "seed " << seed << ", way " << way;
            }
            ++pairs;
            ++ofWay[way];
            equal += wanted;
            changedAndEqual += wanted && way > 1;
        }
    }
    for (int way = 0; way <= 4; ++way) EXPECT_GT(ofWay[way], 200) << way;
    EXPECT_GT(equal, 1000);
    EXPECT_LT(changedAndEqual, pairs / 5) << "changes that change nothing should be few";
}

}  // namespace
}  // namespace tiepoint
