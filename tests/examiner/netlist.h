#pragma once
// What is to be built, before it lies anywhere: parts, and which of their leads meet. Nodes are numbers; a node with one lead is a loose end.

#include "core/bench/bench.h"

#include <string>
#include <vector>

namespace tiepoint::examiner {

struct Member {
    Part part;               ///< with values and states; no lead is in a hole yet
    std::vector<int> nodes;  ///< by lead
    bool parked = false;     ///< waits on the board, joined to nothing on purpose
};

/// A supply of the netlist.
struct Source {
    int member = 0;
    int plus = 0, minus = 0;
    double volt = 0;         ///< without load
    double mostAmpere = 0;   ///< what the circuits on it may draw together
    double drawnAmpere = 0;  ///< an estimate of what they draw
};

class Netlist {
public:
    int addNode() { return nodes_++; }
    int nodeCount() const { return nodes_; }

    /// A part with one node a lead, in the order of its kind; its id is the kind's prefix and the next number.
    Member& add(const char* kind, std::vector<int> nodes);
    /// How many parts have that kind.
    int countOf(const char* kind) const;

    std::vector<Member> members;
    std::vector<Source> sources;
    int idleJumpers = 0;  ///< jumpers to lay that change nothing

private:
    int nodes_ = 0;
};

/// Sets a value or a state of a part, by name; a choice by its index. Requires that the kind has it.
void setValue(Part& part, const char* name, double to);
void setState(Part& part, const char* name, double to);

}  // namespace tiepoint::examiner
