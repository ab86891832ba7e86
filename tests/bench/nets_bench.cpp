// All nets of a full board anew: 60 jumpers, 200 leads. Against a general graph library's connected components over holes, its
// disjoint sets over holes, and the bare touch of every entry: each strip written, each jumper's two entries read and written, each
// strip read again, and each lead's net read. Each way ends with the net of each of the 200 leads.

#include "bench/stopwatch.h"
#include "core/base/disjoint_sets.h"
#include "core/board/board_kind.h"

#include <boost/graph/adjacency_list.hpp>
#include <boost/graph/connected_components.hpp>
#include <boost/pending/disjoint_sets.hpp>

#include <cstdio>
#include <numeric>
#include <random>

namespace tiepoint::test {
namespace {

using Join = std::pair<std::uint16_t, std::uint16_t>;
constexpr int kJumpers = 60, kLeads = 200;

struct Job {
    int holes = 0, strips = 0;
    std::vector<int> stripOfHole;
    std::vector<std::pair<int, int>> jumpers;  ///< holes
    std::vector<int> leads;                    ///< holes
    std::vector<Join> joins;
    std::vector<std::uint16_t> leadStrips;
};

Job makeJob() {
    const BoardKind& kind = *findBoardKind("full");
    Job job;
    job.holes = kind.holeCount();
    job.strips = kind.stripCount(Rails::Through);
    job.stripOfHole.resize(job.holes);
    for (int line = 0; line < kRowCount + kRailCount; ++line) {
        for (int n = 1; kind.has(static_cast<Line>(line), n); ++n) {
            job.stripOfHole[kind.holeIndex(static_cast<Line>(line), n)] =
                kind.stripIndex(Rails::Through, static_cast<Line>(line), n);
        }
    }
    std::vector<int> holes(job.holes);
    std::iota(holes.begin(), holes.end(), 0);
    std::shuffle(holes.begin(), holes.end(), std::mt19937(20));
    for (int j = 0; j < kJumpers; ++j) {
        const int a = holes[2 * j], b = holes[2 * j + 1];
        job.jumpers.emplace_back(a, b);
        job.joins.emplace_back(static_cast<std::uint16_t>(job.stripOfHole[a]),
                               static_cast<std::uint16_t>(job.stripOfHole[b]));
    }
    for (int lead = 0; lead < kLeads; ++lead) {
        job.leads.push_back(holes[2 * kJumpers + lead]);
        job.leadStrips.push_back(static_cast<std::uint16_t>(job.stripOfHole[job.leads.back()]));
    }
    return job;
}

/// Calls join(a, b) for neighbouring holes of each strip and for each jumper.
template <class Visit>
void eachEdge(const Job& job, const std::vector<int>& firstHole, Visit join) {
    for (int hole = 0; hole < job.holes; ++hole) {
        const int first = firstHole[job.stripOfHole[hole]];
        if (first != hole) join(first, hole);
    }
    for (const auto& [a, b] : job.jumpers) join(a, b);
}

int run() {
    const Job job = makeJob();
    std::vector<int> firstHole(job.strips, -1);
    for (int hole = job.holes; hole-- > 0;) firstHole[job.stripOfHole[hole]] = hole;

    std::vector<std::uint16_t> netOf(job.strips), netOfLead(kLeads), touched(job.strips);
    std::vector<int> component(job.holes), rank(job.holes), parent(job.holes), componentOfLead(kLeads),
        setOfLead(kLeads);

    SideBySide race;
    race.add("union-find over strips", [&] {
        numberSets<std::uint16_t>(job.joins, netOf);
        for (int lead = 0; lead < kLeads; ++lead) netOfLead[lead] = netOf[job.leadStrips[lead]];
        keep(netOfLead.data());
    });
    race.add("the bare touch of every entry", [&] {
        std::iota(touched.begin(), touched.end(), std::uint16_t{0});
        keep(touched.data());
        for (const auto& [first, second] : job.joins) std::swap(touched[first], touched[second]);
        std::uint16_t sum = 0;
        for (std::uint16_t& entry : touched) entry = sum = static_cast<std::uint16_t>(sum + entry);
        for (int lead = 0; lead < kLeads; ++lead) netOfLead[lead] = touched[job.leadStrips[lead]];
        keep(netOfLead.data());
    });
    race.add("disjoint sets over holes", [&] {
        boost::disjoint_sets sets(rank.data(), parent.data());
        for (int hole = 0; hole < job.holes; ++hole) sets.make_set(hole);
        eachEdge(job, firstHole, [&](int a, int b) { sets.union_set(a, b); });
        for (int lead = 0; lead < kLeads; ++lead) setOfLead[lead] = sets.find_set(job.leads[lead]);
        keep(setOfLead.data());
    });
    race.add("connected components over holes", [&] {
        boost::adjacency_list<boost::vecS, boost::vecS, boost::undirectedS> graph(static_cast<std::size_t>(job.holes));
        eachEdge(job, firstHole, [&](int a, int b) {
            boost::add_edge(static_cast<std::size_t>(a), static_cast<std::size_t>(b), graph);
        });
        boost::connected_components(graph, component.data());
        for (int lead = 0; lead < kLeads; ++lead) componentOfLead[lead] = component[job.leads[lead]];
        keep(componentOfLead.data());
    });
    std::printf("nets of a full board, %d jumpers, %d leads\n", kJumpers, kLeads);
    const auto seconds = race.run();

    Gate gate;
    numberSets<std::uint16_t>(job.joins, netOf);
    bool same = true;  // the same partition of leads by all ways
    for (int a = 0; a < kLeads; ++a) {
        for (int b = 0; b < a; ++b) {
            const bool one = netOf[job.leadStrips[a]] == netOf[job.leadStrips[b]];
            same = same && one == (componentOfLead[a] == componentOfLead[b]) && one == (setOfLead[a] == setOfLead[b]);
        }
    }
    gate.atLeast("the same nets by every way (1: yes)", same, 1);
    gate.atLeast("times faster than connected components", seconds[3] / seconds[0], 100);
    gate.atLeast("times faster than disjoint sets over holes", seconds[2] / seconds[0], 6);
    gate.atMost("times the bare touch of every entry", seconds[0] / seconds[1], 2);
    return gate.exitCode();
}

}  // namespace
}  // namespace tiepoint::test

int main() { return tiepoint::test::run(); }
