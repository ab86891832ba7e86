#pragma once
// Contacts that bounce: a switch that closes opens and closes a few times more before it stays, and does so a little when it opens.
//
// When a contact moves, the instants at which it parts and meets again are fixed at once, from its part's id and how often it has moved, so
// that the same hand gives the same bounce each time. Their number and shape: J. Ganssle, "A guide to debouncing" (2004), from memory: some
// few edges within 1 to 6 ms, most of them early.
// A plain value; one thread at a time.

#include "core/bench/bench.h"
#include "core/circuit/compile.h"

#include <map>
#include <string>
#include <utility>
#include <vector>

namespace tiepoint {

class ContactBounce {
public:
    /// Contacts as they are meant to stand from a time on; those that moved since the last call bounce.
    void follow(const Bench& bench, const std::vector<CompiledElement>& elements, const std::vector<char>& present,
                double second);
    /// Whatever bounces stays where it is meant to stand: elements have other numbers from now on.
    void settle() { edges_.clear(); }
    /// Puts bouncing contacts where they are at a time.
    void apply(std::vector<char>& present, double second) const;
    /// The next instant after that one at which a contact parts or meets; infinity without one.
    double nextAfter(double second) const;

private:
    struct Edge {
        double second;
        int element;
        bool meets;
    };
    struct Known {
        bool closed = false;
        int moves = 0;
    };

    void bounce(const std::string& part, int element, const Known& known, double lastsSecond, bool alone,
                double second);

    std::map<std::pair<std::string, int>, Known> known_;  ///< by part and element of its model
    std::vector<Edge> edges_;                             ///< in order of time
};

}  // namespace tiepoint
