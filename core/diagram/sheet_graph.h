#pragma once
// The layered graph of a diagram: layers across the current (Sugiyama, Tagawa and Toda, IEEE Trans. SMC-11 (1981) 109-125). Nets stand on even
// layers, parts on odd ones, and a wire that passes a layer has a node of its own there. `across` is the direction along a layer, `along`
// that of the current.

#include "core/diagram/diagram.h"

#include <vector>

namespace tiepoint {

/// Where wires leave a node of a part.
struct SheetPort {
    int lead = 0;
    int net = -1;
    bool after = true;  ///< towards the layers that follow
    double across = 0;  ///< from the node's middle
    double along = 0;   ///< where its straight wire to the next layer begins
};

/// A piece of wire inside the room of a part's node; along and across from its middle.
struct InnerWire {
    int net = -1;
    Point from, to;  ///< x along, y across
};

/// A part with its wires and words, ready to be placed. Points: x along, y across.
struct SheetBlock {
    int part = -1;
    const Symbol* symbol = nullptr;
    SymbolPose pose;  ///< `along` as if x were along
    Rect body;
    std::vector<SheetLead> leads;
    std::vector<SheetPort> ports;
    std::vector<InnerWire> inner;
    std::vector<Point> openEnds;
    std::vector<SheetWord> words;
    double before = 0, after = 0;  ///< how far it reaches along
    double low = 0, high = 0;      ///< how far it reaches across
};

struct SheetNode {
    enum class Kind { Part, Net, Through };
    Kind kind = Kind::Part;
    int layer = 0;
    int block = -1;  ///< of a part
    int net = -1;
    double key = 0;  ///< where the hints want it
    int pin = 0;     ///< -1: first in its layer; 1: last
    double low = 1, high = 1;
    double across = 0;  ///< found by placeAcross()
};

/// Between neighbouring layers, from the one before to the one after.
struct SheetEdge {
    int from = 0, to = 0;
    double fromAcross = 0, toAcross = 0;  ///< ports
};

struct SheetGraph {
    std::vector<SheetNode> nodes;
    std::vector<SheetEdge> edges;
    std::vector<std::vector<int>> layers;  ///< nodes in their order
};

/// Crossings of edges in that order. O(E log E).
long crossingsOf(const SheetGraph& graph);
/// Reorders the layers for few crossings; keeps an order where no other has fewer crossings.
void orderLayers(SheetGraph& graph);
/// Sets the nodes' places (Brandes and Köpf 2001). The order stays.
void placeAcross(SheetGraph& graph);

}  // namespace tiepoint
