#pragma once
// Lays a circuit that is given by named nodes out on full boards, as a patient person would: every two-lead part gets five columns
// of its own on one side of the gap, and jumpers join the strips that belong to one node.
//
// A layout can be shifted along the board, mirrored over the gap, or list its parts backwards; the circuit stays the same.

#include "support/build_bench.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <string>
#include <vector>

namespace tiepoint::test {

/// One two-lead part between two named nodes: first lead (plus, anode) and second.
struct Piece2 {
    std::string id, kind, first, second;
    std::vector<std::pair<std::string, double>> values;  ///< numbers only; a choice by its index
};

struct LayOutOptions {
    int shift = 0;  ///< columns, 0..3
    bool mirrored = false;
    bool backwards = false;  ///< parts listed last first
};

inline Bench layOut(const std::vector<Piece2>& pieces, const LayOutOptions& options = {}) {
    constexpr int kColumnsOfPiece = 5, kSpan = 4, kPiecesOfSide = 12, kBoardPitches = 30;
    Bench bench;
    std::map<std::string, std::vector<std::string>>
        stripsOfNode;  // strips as "Board1.abc12": three rows, then the column

    const auto strip = [&](int place, int extra) {
        const int board = place / (2 * kPiecesOfSide), side = place / kPiecesOfSide % 2;
        const int column = 1 + options.shift + kColumnsOfPiece * (place % kPiecesOfSide) + extra;
        const bool upper = (side == 0) != options.mirrored;
        return fmt::format("Board{}.{}{}", board + 1, upper ? "abc" : "jih", column);
    };
    // Row k (0: for the lead, 1 and 2: for jumpers) of a strip.
    const auto hole = [](const std::string& stripName, int k) {
        const auto dot = stripName.find('.');
        return stripName.substr(0, dot + 1) + stripName[dot + 1 + k] + stripName.substr(dot + 4);
    };

    const int boards = 1 + (static_cast<int>(pieces.size()) - 1) / (2 * kPiecesOfSide);
    for (int b = 0; b < boards; ++b) {
        Board board;
        board.id = fmt::format("Board{}", b + 1);
        board.kind = findBoardKind("full");
        board.atY = b * kBoardPitches;
        bench.boards.push_back(board);
    }
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        const Piece2& piece = pieces[i];
        const PartKind* kind = findKind(piece.kind);
        if (!kind) slip("the kind", piece.kind);
        Part part = makePart(*kind, piece.id);
        const std::string ends[] = {strip(static_cast<int>(i), 0), strip(static_cast<int>(i), kSpan)};
        for (int lead : {0, 1}) part.leads[lead] = holeAt(hole(ends[lead], 0));
        for (const auto& [name, value] : piece.values) {
            const int index = kind->valueIndex(name);
            if (index < 0) slip("the value", name);
            part.values[index] = value;
        }
        bench.parts.push_back(part);
        stripsOfNode[piece.first].push_back(ends[0]);
        stripsOfNode[piece.second].push_back(ends[1]);
    }
    for (const auto& [node, strips] : stripsOfNode) {
        for (std::size_t k = 1; k < strips.size(); ++k) {
            Jumper jumper;
            jumper.id = freeId(bench, "W");
            jumper.ends = {holeAt(hole(strips[k - 1], 1)), holeAt(hole(strips[k], 2))};
            bench.jumpers.push_back(jumper);
        }
    }
    if (options.backwards) std::reverse(bench.parts.begin(), bench.parts.end());
    return bench;
}

}  // namespace tiepoint::test
