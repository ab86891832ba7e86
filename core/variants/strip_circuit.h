#pragma once
// The circuit of a bench with a node for every piece of metal: each strip, socket and hanging lead apart, and what joins them
// (jumpers, joined legs) as edges. So a jumper that goes opens one edge, and doesn't rebuild a net.
//
// "Metal" numbers the pieces as a layout does: strips first, then leads that are in no hole. Edges form a spanning forest of each
// net; those beyond it (chords) join what is joined already.
// Thread rule: immutable once made.

#include "core/circuit/compile.h"
#include "core/instant/inputs.h"

#include <memory>
#include <vector>

namespace tiepoint {

/// The hole whose clip a lead touches, if any.
std::optional<Hole> touchedHole(const Part& part, int lead);

/// Metal that joins two pieces: a jumper, or legs of a part that are one piece inside.
struct MetalEdge {
    int a, b;                    ///< metal
    int jumper = -1, part = -1;  ///< whose it is
};

class StripCircuit {
public:
    StripCircuit(std::shared_ptr<const Layout> layout, const Inputs& inputs);

    const Layout& layout() const { return *layout_; }
    const Circuit& circuit() const { return compiled_.circuit; }
    const CompiledCircuit& compiled() const { return compiled_; }
    const std::vector<char>& present() const { return present_; }  ///< by element
    const Inputs& inputs() const { return inputs_; }

    const std::vector<MetalEdge>& tree() const { return tree_; }
    const std::vector<MetalEdge>& chords() const { return chords_; }
    int nodeOf(int metal) const { return nodeOfMetal_[metal]; }  ///< -1 where nothing is
    int metalOfLead(int lead) const { return metalOfLead_[lead]; }
    int metalOf(const Hole& hole) const { return layout_->stripOfHole[layout_->holeIndex(hole)]; }
    int metalOf(const JumperEnd& end) const;
    int firstElement(int part) const { return firstElement_[part]; }  ///< its elements follow in the order of its model
    int elementCount(int part) const;

    /// Where a node stands in its tree: the pieces below the edge to `lowerOf` are those with firstOf <= place < endOf.
    int placeOf(int node) const { return place_[node]; }
    int endOf(int node) const { return end_[node]; }
    int rootOf(int node) const { return root_[node]; }
    int lowerOf(int edge) const { return lower_[edge]; }  ///< of a tree's edge: its node farther from the root

private:
    void numberMetal();
    void collectEdges();
    void walkTrees();

    std::shared_ptr<const Layout> layout_;
    Inputs inputs_;
    CompiledCircuit compiled_;
    std::vector<char> present_;
    std::vector<MetalEdge> tree_, chords_;
    std::vector<int> metalOfLead_, nodeOfMetal_, firstElement_;
    std::vector<int> place_, end_, root_, lower_;
};

}  // namespace tiepoint
