#include "core/flow/loop_net.h"

#include <algorithm>

namespace tiepoint {

namespace {

// Beyond it a row of the inverse costs more than its share of a sparse factorisation, and memory grows with the square.
constexpr std::size_t kMostInverted = 64;

}  // namespace

LoopNet::LoopNet(const Layout& layout, const Forest& forest, std::span<const int> chords)
    : drop_(Eigen::VectorXd::Zero(static_cast<Eigen::Index>(chords.size()))),
      current_(drop_) {
    for (int chord : chords) {
        firstStep_.push_back(static_cast<int>(steps_.size()));
        walkLoop(layout, forest, chord);
    }
    firstStep_.push_back(static_cast<int>(steps_.size()));
    if (loopCount() <= kMostInverted)
        invert(layout);
    else
        factorWhole(layout, forest);
}

/// Along the chord, then from its end and from its start up to where both ways meet: the later position always climbs.
void LoopNet::walkLoop(const Layout& layout, const Forest& forest, int chord) {
    const auto add = [&](int piece, double sign) { steps_.push_back({piece, sign, sign * layout.pieces[piece].ohm}); };
    add(chord, 1);
    int back = forest.positionOf[layout.pieces[chord].to], start = forest.positionOf[layout.pieces[chord].from];
    while (back != start) {
        int& later = back > start ? back : start;
        const Forest::Step& up = forest.steps[later];
        add(up.piece, later == back ? -up.sign : up.sign);
        later = up.parent;
    }
}

void LoopNet::invert(const Layout& layout) {
    const auto count = static_cast<Eigen::Index>(loopCount());
    Eigen::MatrixXd ohm = Eigen::MatrixXd::Zero(count, count);
    std::vector<double> drop(layout.pieces.size(), 0.0);  // by piece: across it, for 1 A round the loop of this column
    for (Eigen::Index c = 0; c < count; ++c) {
        const auto loop = [&](Eigen::Index k) {
            return std::span(steps_).subspan(firstStep_[k], firstStep_[k + 1] - firstStep_[k]);
        };
        for (const Step& step : loop(c)) drop[step.piece] = step.signedOhm;
        for (Eigen::Index d = 0; d < count; ++d) {
            for (const Step& step : loop(d)) ohm(d, c) += step.sign * drop[step.piece];
        }
        for (const Step& step : loop(c)) drop[step.piece] = 0;
    }
    inverse_ = ohm.llt().solve(Eigen::MatrixXd::Identity(count, count));
}

void LoopNet::factorWhole(const Layout& layout, const Forest& forest) {
    whole_ = std::make_unique<Whole>();
    const int net = layout.joints[layout.pieces[steps_.front().piece].from].net;
    std::vector<int> rowOf(layout.joints.size(), -1);  // by joint
    int rows = 0;
    for (std::size_t at = forest.roots; at < forest.jointAt.size(); ++at) {
        if (layout.joints[forest.jointAt[at]].net == net) rowOf[forest.jointAt[at]] = rows++;
    }

    std::vector<Eigen::Triplet<double>> lower;
    for (const Piece& piece : layout.pieces) {
        if (layout.joints[piece.from].net != net) continue;
        const int a = rowOf[piece.from], b = rowOf[piece.to];
        if (a >= 0) lower.emplace_back(a, a, 1 / piece.ohm);
        if (b >= 0) lower.emplace_back(b, b, 1 / piece.ohm);
        if (a >= 0 && b >= 0) lower.emplace_back(std::max(a, b), std::min(a, b), -1 / piece.ohm);
    }
    Eigen::SparseMatrix<double> laplacian(rows, rows);
    laplacian.setFromTriplets(lower.begin(), lower.end());
    whole_->factors.compute(laplacian);
    whole_->inverseDiagonal = whole_->factors.vectorD().cwiseInverse();
    whole_->drawn.resize(rows);
    whole_->ordered.resize(rows);
    whole_->volt.resize(rows);

    for (int lead = 0; lead < layout.leadCount(); ++lead) {
        if (const int row = rowOf[layout.drawJointOf(lead)]; row >= 0) whole_->draws.push_back({lead, row});
    }
    for (std::size_t k = 0; k < loopCount(); ++k) {
        const Piece& chord = layout.pieces[steps_[firstStep_[k]].piece];
        whole_->chordRows.push_back({rowOf[chord.from], rowOf[chord.to]});
    }
}

/// What the tree's currents leave across each open chord, turned into loop currents.
void LoopNet::findByDrops(std::span<const double> pieceCurrent) {
    const Step* step = steps_.data();
    for (std::size_t k = 0; k < loopCount(); ++k) {
        double even = 0, odd = 0;  // two sums, so that no addition waits for the one before
        const Step* const end = steps_.data() + firstStep_[k + 1];
        for (; step + 1 < end; step += 2) {
            even -= step[0].signedOhm * pieceCurrent[step[0].piece];
            odd -= step[1].signedOhm * pieceCurrent[step[1].piece];
        }
        if (step < end) even -= step->signedOhm * pieceCurrent[step->piece], ++step;
        drop_[k] = even + odd;
    }
    current_.noalias() = inverse_ * drop_;
}

/// A chord's current is its loop's, since no other loop runs through it.
void LoopNet::findByWhole(std::span<const double> injection) {
    whole_->drawn.setZero();
    for (const Whole::Draw& draw : whole_->draws) whole_->drawn[draw.row] -= injection[draw.lead];
    // What solve() would do, in vectors that stay.
    Eigen::VectorXd& volt = whole_->volt;
    whole_->ordered.noalias() = whole_->factors.permutationP() * whole_->drawn;
    whole_->factors.matrixL().solveInPlace(whole_->ordered);
    whole_->ordered.array() *= whole_->inverseDiagonal.array();
    whole_->factors.matrixU().solveInPlace(whole_->ordered);
    volt.noalias() = whole_->factors.permutationPinv() * whole_->ordered;
    const auto voltAt = [&](int row) { return row < 0 ? 0.0 : volt[row]; };
    for (std::size_t k = 0; k < loopCount(); ++k) {
        current_[k] =
            (voltAt(whole_->chordRows[k][0]) - voltAt(whole_->chordRows[k][1])) / steps_[firstStep_[k]].signedOhm;
    }
}

void LoopNet::correct(std::span<const double> injection, std::span<double> pieceCurrent) {
    if (whole_)
        findByWhole(injection);
    else
        findByDrops(pieceCurrent);
    for (std::size_t k = 0; k < loopCount(); ++k) {
        for (int s = firstStep_[k]; s < firstStep_[k + 1]; ++s)
            pieceCurrent[steps_[s].piece] += steps_[s].sign * current_[k];
    }
}

}  // namespace tiepoint
