#pragma once
// The loops of one net: each piece outside the spanning tree (a chord) closes one, from the chord's `from` along it and back through
// the tree. Prepared once; correct() is allocation-free. Not thread-safe.

#include "core/flow/forest.h"

#include <Eigen/Dense>
#include <Eigen/SparseCholesky>

#include <memory>
#include <span>
#include <vector>

namespace tiepoint {

class LoopNet {
public:
    /// `chords`: the pieces of one net that are not in the forest.
    LoopNet(const Layout& layout, const Forest& forest, std::span<const int> chords);

    /// Adds to currents that run in the tree alone (0 in the chords) what goes round the loops.
    void correct(std::span<const double> injection, std::span<double> pieceCurrent);

private:
    /// One piece on the way round a loop.
    struct Step {
        int piece;
        double sign;  ///< +1 where the loop runs along the piece
        double signedOhm;
    };
    /// A factorisation of the whole net with its root joint at 0 V, for nets with many loops.
    struct Whole {
        struct Draw {
            int lead, row;
        };
        std::vector<Draw> draws;
        std::vector<std::array<int, 2>> chordRows;  ///< by loop: rows of the chord's `from` and `to`; -1: the root
        Eigen::SimplicialLDLT<Eigen::SparseMatrix<double>> factors;
        Eigen::VectorXd inverseDiagonal;
        Eigen::VectorXd drawn, ordered, volt;
    };

    std::size_t loopCount() const { return firstStep_.size() - 1; }
    void walkLoop(const Layout& layout, const Forest& forest, int chord);
    void invert(const Layout& layout);
    void factorWhole(const Layout& layout, const Forest& forest);
    void findByDrops(std::span<const double> pieceCurrent);
    void findByWhole(std::span<const double> injection);

    std::vector<Step> steps_;         ///< of all loops, each beginning with its chord
    std::vector<int> firstStep_;      ///< by loop, with one entry more at the end
    Eigen::MatrixXd inverse_;         ///< of the matrix of loop resistances
    Eigen::VectorXd drop_, current_;  ///< by loop
    std::unique_ptr<Whole> whole_;    ///< in place of inverse_ where loops are many
};

}  // namespace tiepoint
