// How the currents of a net divide.
//
// 1. In a spanning tree the current of each piece is the sum of what is drawn beyond it, whatever the resistances: one pass from the
//    leaves to the roots.
// 2. Each piece outside the tree closes one loop. Going round it, the drops must add up to nothing: one small symmetric system for
//    each net, inverted once, whose answer is added along the loops. That keeps Kirchhoff's current law however exact the answer is.
//
// Tried and rejected: potentials of the whole net at each frame (needs resistances even for a tree, and its currents are differences
// of nearly equal numbers); one row of responses to every lead for each loop (one product and one pass, but loops are short and
// nets are not).

#include "core/flow/flow.h"

#include "core/flow/forest.h"
#include "core/flow/loop_net.h"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace tiepoint {

struct Flow::Body {
    std::shared_ptr<const Layout> layout;
    Forest forest;
    std::vector<int> drawPosition;  ///< by lead: where its current leaves the metal
    std::vector<int> chordPieces;   ///< all pieces outside the forest
    std::vector<LoopNet> loopNets;
    std::vector<double> beyond;  ///< by position: what is drawn at the joint and beyond it

    explicit Body(std::shared_ptr<const Layout> of)
        : layout(std::move(of)),
          forest(*layout),
          beyond(layout->joints.size(), 0.0) {
        drawPosition.reserve(layout->leadCount());
        for (int lead = 0; lead < layout->leadCount(); ++lead) {
            drawPosition.push_back(forest.positionOf[layout->drawJointOf(lead)]);
        }
        findLoops();
    }

    void findLoops() {
        std::vector<char> inTree(layout->pieces.size(), 0);
        for (std::size_t at = forest.roots; at < forest.steps.size(); ++at) inTree[forest.steps[at].piece] = 1;
        std::vector<int> chords;
        for (int piece = 0; piece < static_cast<int>(layout->pieces.size()); ++piece) {
            if (!inTree[piece]) chords.push_back(piece);
        }
        const auto netOf = [&](int piece) { return layout->joints[layout->pieces[piece].from].net; };
        std::stable_sort(chords.begin(), chords.end(), [&](int a, int b) { return netOf(a) < netOf(b); });
        for (auto first = chords.begin(); first != chords.end();) {
            const auto last =
                std::find_if(first, chords.end(), [&](int piece) { return netOf(piece) != netOf(*first); });
            loopNets.emplace_back(*layout, forest, std::span<const int>(first, last));
            for (; first != last; ++first) chordPieces.push_back(*first);
        }
    }

    void solve(std::span<const double> injection, std::span<double> pieceCurrent) {
        std::fill(beyond.begin(), beyond.end(), 0.0);
        for (std::size_t lead = 0; lead < injection.size(); ++lead) beyond[drawPosition[lead]] += injection[lead];
        double* const drawn = beyond.data();
        for (int at = static_cast<int>(beyond.size()); --at >= forest.roots;) {
            const Forest::Step& step = forest.steps[at];
            const double ampere = drawn[at];
            pieceCurrent[step.piece] = step.sign * ampere;
            drawn[step.parent] += ampere;
        }
        for (int piece : chordPieces) pieceCurrent[piece] = 0;
        for (LoopNet& net : loopNets) net.correct(injection, pieceCurrent);
    }

    double worstDefect(std::span<const double> injection, std::span<const double> pieceCurrent) const {
        std::vector<double> left(layout->joints.size(), 0.0);  // by position: what arrives, less what leaves
        for (std::size_t p = 0; p < layout->pieces.size(); ++p) {
            left[forest.positionOf[layout->pieces[p].from]] -= pieceCurrent[p];
            left[forest.positionOf[layout->pieces[p].to]] += pieceCurrent[p];
        }
        for (std::size_t lead = 0; lead < injection.size(); ++lead) left[drawPosition[lead]] -= injection[lead];
        double worst = 0;
        for (std::size_t at = forest.roots; at < left.size(); ++at) worst = std::max(worst, std::abs(left[at]));
        return worst;
    }
};

Flow::Flow(std::shared_ptr<const Layout> layout) : body_(std::make_unique<Body>(std::move(layout))) {}
Flow::~Flow() = default;
Flow::Flow(Flow&&) noexcept = default;
Flow& Flow::operator=(Flow&&) noexcept = default;

void Flow::solve(std::span<const double> injection, std::span<double> pieceCurrent) {
    assert(injection.size() == body_->drawPosition.size() && pieceCurrent.size() == body_->layout->pieces.size());
    body_->solve(injection, pieceCurrent);
}

double Flow::worstDefect(std::span<const double> injection, std::span<const double> pieceCurrent) const {
    return body_->worstDefect(injection, pieceCurrent);
}

}  // namespace tiepoint
