#pragma once
// What a circuit is, as one number: which leads of which parts meet, and how everything is set. Two changes of a bench that give the same
// circuit give the same digest, so that slips which nothing could tell apart count once. Different circuits hardly ever share one.
//
// The digest is a sum over nets, each mixed from the sum of its leads' numbers; so a change is followed by looking at the nets that it
// touches, in constant time: taking a jumper away parts its net where it is a bridge of the graph of strips, and then into what hangs below
// it and the rest. Only where two joins of one net go at once is that net walked.
// Leads of a part that may be exchanged without a difference share a number. Ids count: another light in the same place is another circuit.
//
// Immutable; keeps a reference to the layout. Safe from any thread.

#include "core/nets/layout.h"
#include "core/slips/bench_change.h"

#include <cstdint>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace tiepoint {

class CircuitDigest {
public:
    explicit CircuitDigest(const Layout& layout);

    std::uint64_t now() const { return now_; }
    /// The digest once the change is made; now() where it makes no difference. Adds to `work` how much it looked at.
    std::uint64_t after(const BenchChange& change, std::size_t& work) const;
    /// The same once metal joins two nets.
    std::uint64_t afterJoining(int net, int other) const;

private:
    friend class ChangedNets;
    class HalfOfRail;

    /// A strip, or a lead that is in no hole, past the strips.
    using Vertex = int;
    /// Two vertices that metal joins.
    struct Join {
        Vertex from, to;
        bool bridge = false;
        Vertex below = -1;  ///< of a bridge: the end that hangs below it
    };
    /// One way out of a vertex.
    struct Arc {
        Vertex to;
        int join;
    };

    void numberLeads();
    void makeJoins();
    void walk(Vertex root);
    void sumUp();
    Vertex vertexOfEnd(const JumperEnd& end) const;
    Vertex vertexOfHole(const Hole& hole) const;
    Vertex vertexOfLead(int lead) const { return vertexOf_[lead]; }
    /// Where a lead is that touches no clip: by itself.
    Vertex ownVertexOf(int lead) const { return static_cast<Vertex>(layout_.netOfStrip.size()) + lead; }
    int netOf(Vertex vertex) const;
    bool isBelow(Vertex vertex, Vertex top) const;
    std::uint64_t sumBelow(Vertex top) const;
    std::uint64_t settingDifference(const SetFigure& figure) const;
    std::uint64_t railsDifference(const SetRails& rails) const;
    bool breakMatters(int board, Line rail) const;

    const Layout& layout_;
    std::unordered_map<std::string_view, int> parts_, jumpers_, boards_;
    std::vector<std::uint64_t> numberOf_;  ///< by lead
    std::vector<Vertex> vertexOf_;         ///< by lead
    std::vector<Join> joins_;              ///< the jumpers in their order, then joined leads
    std::vector<int> firstJoin_;           ///< by part: its joins, with one entry more at the end
    std::vector<std::vector<Arc>> arcs_;   ///< by vertex
    std::vector<int> entered_, left_;      ///< by vertex: when the walk came and went
    std::vector<std::uint64_t> sums_;      ///< by time of entering: of all vertices before it
    std::vector<std::uint64_t> own_;       ///< by vertex: of the leads in it
    std::vector<std::uint64_t> netSums_;   ///< by net
    std::vector<Vertex> order_;
    std::uint64_t now_ = 0;
};

}  // namespace tiepoint
