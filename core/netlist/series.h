#pragma once
// Series chains of a circuit: parts of two terminals one after the other, where nothing else meets between them.

#include "core/netlist/netlist.h"

#include <vector>

namespace tiepoint {

/// Which parts count and where their terminals go.
struct Wiring {
    Terminals terminals;
    std::vector<char> counts;      ///< by part
    std::vector<int> terminalsOn;  ///< by net (a root): how many terminals of parts that count
};
/// All parts, or only those through which current can go: a part of which fewer than two terminals lead to another part goes, then what
/// hung on it alone, and so on.
Wiring wiringOf(const Netlist& netlist, bool unusedParts);

struct ChainedPart {
    int part = -1;
    bool turned = false;  ///< its last terminal comes first along the chain
};
struct Chain {
    std::vector<ChainedPart> parts;   ///< at least two
    int firstNet = -1, lastNet = -1;  ///< at its ends; -1: hangs. Of a ring both are -1
    bool ring = false;                ///< its last part leads to its first
};
std::vector<Chain> seriesChains(const Netlist& netlist, const Wiring& wiring);

}  // namespace tiepoint
