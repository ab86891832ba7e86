#include "core/base/embedded.h"
#include "core/bench/bench_file.h"
#include "core/diagram/bench_diagram.h"
#include "core/diagram/sheet_graph.h"
#include "core/diagram/sheet_reader.h"
#include "core/netlist/circuit_file.h"
#include "support/random_circuits.h"

#include <boost/graph/adjacency_list.hpp>
#include <boost/graph/boyer_myrvold_planar_test.hpp>
#include <gtest/gtest.h>

#include <algorithm>
#include <ctime>
#include <random>
#include <set>

namespace tiepoint::test {
namespace {

std::vector<std::shared_ptr<const Bench>> harbourBenches() {
    std::vector<std::shared_ptr<const Bench>> benches;
    for (const EmbeddedFile& file : embeddedFiles()) {
        if (file.name.starts_with("benches/"))
            benches.push_back(std::make_shared<const Bench>(std::move(readBench(file.text).value().bench)));
    }
    return benches;
}

void checkSheet(const Netlist& circuit, const Diagram& diagram) {
    ASSERT_EQ(misread(circuit, diagram), "") << writeNetlist(circuit);
    ASSERT_EQ(overlap(diagram), "") << writeNetlist(circuit);
    ASSERT_EQ(diagram.crossings, countedCrossings(diagram));
}

/// Whether the circuit could be drawn without a crossing if symbols were points whose leads could be turned at will: told by a general graph
/// library, whose nodes are parts and nets (Boyer and Myrvold, J. Graph Algorithms Appl. 8 (2004) 241-273).
bool isPlanar(const Netlist& netlist) {
    const Terminals terminals = terminalsOf(netlist);
    boost::adjacency_list<boost::vecS, boost::vecS, boost::undirectedS> graph(netlist.parts.size() +
                                                                              netlist.nets.size());
    std::set<std::pair<std::size_t, std::size_t>> joined;
    for (std::size_t part = 0; part < netlist.parts.size(); ++part) {
        for (const int terminal : terminals.ofLead[part]) {
            const int net = terminals.netOf[static_cast<std::size_t>(terminal)];
            if (net >= 0 && joined.emplace(part, net).second)
                boost::add_edge(part, netlist.parts.size() + static_cast<std::size_t>(net), graph);
        }
    }
    return boost::boyer_myrvold_planarity_test(graph);
}

TEST(Diagram, ReadsBackOnThousandsOfRandomCircuits) {
    RandomCircuits random(20261130);
    for (int round = 0; round < 2000; ++round) {
        const int parts = 1 + random.below(16);
        const Netlist circuit = round % 2 == 0 ? random.wild(parts) : random.tame(parts);
        DiagramHints hints;
        hints.flow = round % 4 < 2 ? SheetFlow::Rightward : SheetFlow::Downward;
        checkSheet(circuit, layOutDiagram(circuit, hints));
        if (HasFatalFailure()) return;
    }
}

TEST(Diagram, ReadsBackLargeCircuits) {
    RandomCircuits random(77);
    for (int round = 0; round < 20; ++round) {
        const Netlist circuit = round % 2 == 0 ? random.wild(40) : random.tame(40);
        checkSheet(circuit, layOutDiagram(circuit));
        if (HasFatalFailure()) return;
    }
}

/// A circuit that no plane graph can hold crosses once: two transistors that drive each other crosswise, with the supply, are the graph K3,3,
/// whose crossing number is 1 (Kuratowski 1930; Guy 1972, from memory).
TEST(Diagram, HarbourBenchesHaveNoCrossingsAndTellAllVolts) {
    for (const auto& bench : harbourBenches()) {
        const auto sheet = diagramOf(buildLayout(bench), SymbolStyle::Iec);
        checkSheet(sheet->netlist, sheet->diagram);
        EXPECT_EQ(sheet->diagram.crossings, isPlanar(sheet->netlist) ? 0 : 1) << bench->title;
        EXPECT_EQ(sheet->diagram.tags.size(), sheet->netlist.nets.size()) << bench->title;
    }
}

/// The wire from a supply up to the row of parts bends once; a small step in it would look like a slip of the pen.
TEST(Diagram, ALoopHasOneTopWireAndOneReturn) {
    for (const char* part : {R"("kind": "toggle", "leads": {"1": "a", "2": "b"})",
                             R"("kind": "diode", "leads": {"anode": "a", "cathode": "b"})",
                             R"("kind": "lamp", "leads": {"1": "a", "2": "b"})"}) {
        const std::string text = std::string(R"({"format": "tiepoint-circuit", "version": 1, "title": "Loop", "parts": [
                {"id": "PS1", "kind": "cells", "leads": {"+": "a", "-": "c"}}, {"id": "X1", )") +
                                 part + R"(}, {"id": "R1", "kind": "resistor", "leads": {"1": "b", "2": "c"}}]})";
        const auto read = readNetlist(text);
        ASSERT_TRUE(read) << read.error().message;
        const Netlist& circuit = read->netlist;
        DiagramHints hints;
        hints.flow = SheetFlow::Rightward;
        const Diagram diagram = layOutDiagram(circuit, hints);
        checkSheet(circuit, diagram);
        std::set<double> levels;
        for (const SheetWire& wire : diagram.wires)
            if (wire.from.y == wire.to.y && wire.from.x != wire.to.x) levels.insert(wire.from.y);
        EXPECT_EQ(levels.size(), 2u) << part;
    }
}

TEST(Diagram, DrawsTheSameEachTimeAndWhicheverWayPartsAreListed) {
    for (const auto& bench : harbourBenches()) {
        const auto first = diagramOf(buildLayout(bench), SymbolStyle::Iec);
        Bench turned = *bench;
        std::ranges::reverse(turned.parts);
        const auto second = diagramOf(buildLayout(std::make_shared<const Bench>(turned)), SymbolStyle::Iec);
        ASSERT_EQ(first->diagram.wires.size(), second->diagram.wires.size());
        for (const PlacedPart& part : first->diagram.parts) {
            const int other = second->netlist.partIndex(first->netlist.parts[static_cast<std::size_t>(part.part)].id);
            EXPECT_EQ(part.pose, second->diagram.parts[static_cast<std::size_t>(other)].pose) << bench->title;
        }
    }
}

TEST(Diagram, LaysFortyPartsOutWithinFiftyMilliseconds) {
    RandomCircuits random(5);
    double worst = 0;
    for (int round = 0; round < 10; ++round) {
        const Netlist circuit = random.tame(40);
        const std::clock_t begin = std::clock();
        layOutDiagram(circuit);
        worst = std::max(worst, 1000.0 * static_cast<double>(std::clock() - begin) / CLOCKS_PER_SEC);
    }
    RecordProperty("worstMs", std::to_string(worst));
    EXPECT_LE(worst, 50) << "ms of processor time";
}

/// The fewest crossings of any orders, by trying all.
long fewestCrossings(SheetGraph graph, std::size_t layer = 0) {
    if (layer == graph.layers.size()) return crossingsOf(graph);
    std::ranges::sort(graph.layers[layer]);
    long least = -1;
    do {
        const long crossings = fewestCrossings(graph, layer + 1);
        if (least < 0 || crossings < least) least = crossings;
    } while (std::next_permutation(graph.layers[layer].begin(), graph.layers[layer].end()));
    return least;
}

TEST(Diagram, CrossesAsLittleAsTheBestOfAllOrdersOnSmallCircuits) {
    std::mt19937 random(31);
    const auto below = [&](int limit) { return std::uniform_int_distribution<int>(0, limit - 1)(random); };
    int same = 0;
    long found = 0, least = 0;
    constexpr int kRounds = 60;
    for (int round = 0; round < kRounds; ++round) {
        SheetGraph graph;
        graph.layers.resize(3);
        for (int layer = 0; layer < 3; ++layer) {
            for (int i = 0; i < 4; ++i) {
                SheetNode node;
                node.layer = layer;
                graph.layers[static_cast<std::size_t>(layer)].push_back(static_cast<int>(graph.nodes.size()));
                graph.nodes.push_back(node);
            }
        }
        for (int edge = 0; edge < 9; ++edge) {
            const int layer = below(2);
            graph.edges.push_back({layer * 4 + below(4), layer * 4 + 4 + below(4), 0, 0});
        }
        const long best = fewestCrossings(graph);
        orderLayers(graph);
        const long now = crossingsOf(graph);
        ASSERT_GE(now, best);
        same += now == best;
        found += now;
        least += best;
    }
    EXPECT_GE(same, kRounds * 95 / 100) << found << " crossings where " << least << " would do";
}

TEST(Diagram, AnEditMovesLittle) {
    RandomCircuits random(99);
    double moved = 0;
    int parts = 0;
    for (int round = 0; round < 60; ++round) {
        const Netlist before = random.tame(12);
        const Diagram first = layOutDiagram(before);
        Netlist after = before;
        const auto gone = static_cast<std::ptrdiff_t>(1 + random.below(11));
        after.parts.erase(after.parts.begin() + gone);
        after.leads.erase(after.leads.begin() + gone);
        renumberNets(after);
        DiagramHints hints;
        keepOrder(hints, after, first, before);
        const Diagram second = layOutDiagram(after, hints);
        EXPECT_EQ(second.flow, first.flow);
        for (const PlacedPart& part : second.parts) {
            const int old = before.partIndex(after.parts[static_cast<std::size_t>(part.part)].id);
            // A sheet is shown in the middle of its paper.
            const Point now = part.pose.at - Point{second.width / 2, second.height / 2};
            const Point then =
                first.parts[static_cast<std::size_t>(old)].pose.at - Point{first.width / 2, first.height / 2};
            moved += distance(now, then);
            ++parts;
        }
    }
    RecordProperty("meanMoveMm", std::to_string(moved / parts));
    EXPECT_LT(moved / parts, 25) << "mm, where a symbol is 22 long";
}

TEST(Diagram, CurrentsOfWiresAddUpAtEveryJoint) {
    for (const auto& bench : harbourBenches()) {
        Inputs inputs;
        for (const Part& part : bench->parts) inputs.held.insert(part.id);
        const auto snapshot = evaluate(bench, inputs);
        const auto sheet = diagramOf(snapshot->layout, SymbolStyle::Iec);
        const std::vector<double> currents = sheet->currents(*snapshot);
        std::vector<double> sum(static_cast<std::size_t>(sheet->places), 0);
        std::vector<char> ends(sum.size());
        double most = 0;
        for (std::size_t way = 0; way < currents.size(); ++way) {
            const SheetWay& each = sheet->ways[way];
            const bool inward =
                each.part >= 0 && sheet->diagram.parts[static_cast<std::size_t>(each.part)].leads.size() != 2;
            sum[static_cast<std::size_t>(each.fromPlace)] -= currents[way];
            sum[static_cast<std::size_t>(each.toPlace)] += currents[way];
            if (inward) ends[static_cast<std::size_t>(each.toPlace)] = 1;
            most = std::max(most, std::abs(currents[way]));
        }
        for (std::size_t place = 0; place < sum.size(); ++place) {
            if (!ends[place]) {
                EXPECT_NEAR(sum[place], 0, 1e-9) << bench->title;
            }
        }
        if (bench->title == "Lock gate") {
            EXPECT_GT(most, 5e-3);
        }
    }
}

TEST(Diagram, EverySymbolIsReadInBothStyles) {
    int symbols = 0;
    for (const EmbeddedFile& file : embeddedFiles()) {
        if (!file.name.starts_with("parts/") || file.text.find("\"symbol\"") == std::string_view::npos) continue;
        for (const PartKind& kind : catalogue()) {
            if (file.name != "parts/" + kind.name + ".json") continue;
            for (const SymbolStyle style : {SymbolStyle::Iec, SymbolStyle::Ieee}) {
                const auto symbol = readSymbol(file.text, kind, style);
                ASSERT_TRUE(symbol.ok()) << symbol.error().oneLine();
                EXPECT_FALSE(symbol->shapes.empty()) << kind.name;
            }
            EXPECT_NE(symbolOf(kind, SymbolStyle::Iec), nullptr) << kind.name;
            ++symbols;
        }
    }
    EXPECT_GE(symbols, 13);
}

TEST(Diagram, RefusesSymbolsThatAreWrong) {
    const PartKind& resistor = *findKind("resistor");
    for (
        const char* text :
        {R"({"symbol": {"leads": {"1": [0, 0, "start"]}, "iec": [["line", 0, 0, 1, 1]]}})",
         R"({"symbol": {"leads": {"1": [0, 0, "start"], "2": [1, 0, "up"]}, "iec": [["line", 0, 0, 1, 1]]}})",
         R"({"symbol": {"leads": {"1": [0, 0, "start"], "2": [1, 0, "end"]}, "iec": [["line", 0, 0, 1]]}})",
         R"({"symbol": {"leads": {"1": [0, 0, "start"], "2": [1, 0, "end"]}, "iec": [["star", 0, 0]]}})",
         R"({"symbol": {"leads": {"1": [0, 0, "start"], "2": [1, 0, "end"]}, "iec": [["circle", 0, 0, 1, {"closed": 9}]]}})",
         R"({})"}) {
        EXPECT_FALSE(readSymbol(text, resistor, SymbolStyle::Iec).ok()) << text;
    }
}

}  // namespace
}  // namespace tiepoint::test
