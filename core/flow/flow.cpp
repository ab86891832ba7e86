// How each net's current divides inside its own metal.
//
// Method. Joints are renumbered breadth first, net by net, so that every joint comes after its parent in the spanning forest. One pass
// from the last joint to the first adds what each subtree draws: that is the current of the piece to its parent, and no resistance is
// needed. A piece outside the forest (a second jumper between two strips, the second leg of a button) closes one loop. With all such
// pieces at zero the ohmic drop round loop k is e_k; the loop currents x that bring every drop to zero solve M x = -e, where M is the
// loop resistance matrix of the net: symmetric, positive definite, and small, so its inverse is made once for each layout.
// Loop currents run round closed paths: adding them never disturbs Kirchhoff's current law.
//
// Tried and left: a Laplacian solve of the whole net each frame. It needs the resistances even for a tree, and loses digits where
// a short clip lies in series with a long jumper.

#include "core/flow/flow.h"

#include <Eigen/Cholesky>
#include <Eigen/Core>

#include <algorithm>
#include <cmath>
#include <numeric>

namespace tiepoint {
namespace {

/// One step of a loop: which piece, and whether the loop runs along it (+1) or against it (-1).
struct Step {
    int piece;
    double sign;
};

/// The loops of one net.
struct LoopGroup {
    std::vector<std::vector<Step>> loops;  ///< each begins with its own piece outside the forest
    Eigen::MatrixXd inverse;               ///< of the loop resistance matrix
    Eigen::VectorXd drop, current;         ///< scratch
};

/// Pieces by joint, in one flat array.
struct Adjacency {
    std::vector<int> first, piece;

    Adjacency(const std::vector<Piece>& pieces, std::size_t joints) : first(joints + 1, 0), piece(2 * pieces.size()) {
        for (const Piece& p : pieces) {
            ++first[p.from + 1];
            ++first[p.to + 1];
        }
        std::partial_sum(first.begin(), first.end(), first.begin());
        std::vector<int> next(first.begin(), first.end() - 1);
        for (std::size_t i = 0; i < pieces.size(); ++i) {
            piece[next[pieces[i].from]++] = static_cast<int>(i);
            piece[next[pieces[i].to]++] = static_cast<int>(i);
        }
    }
};

}  // namespace

struct Flow::Body {
    std::shared_ptr<const Layout> layout;
    std::vector<int> position;     ///< by joint: place in the breadth-first order
    std::vector<int> parent;       ///< by position: position of the parent, -1 for a root
    std::vector<int> parentPiece;  ///< by position: the piece to the parent, -1 for a root
    std::vector<double> towards;   ///< by position: +1 where that piece runs from the parent to this joint, else -1
    std::vector<int> positionOfLead;
    std::vector<double> drawn;     ///< by position: scratch, what the subtree draws
    std::vector<LoopGroup> groups;

    explicit Body(std::shared_ptr<const Layout> of) : layout(std::move(of)) {
        plantForest();
        for (int lead = 0; lead < layout->leadCount(); ++lead) {
            const int hub = layout->hubOfLead[lead];
            positionOfLead.push_back(position[hub >= 0 ? hub : layout->jointOfLead[lead]]);
        }
        drawn.assign(parent.size(), 0);
        closeLoops();
    }

    void plantForest() {
        const auto& pieces = layout->pieces;
        const Adjacency adjacency(pieces, layout->joints.size());
        position.assign(layout->joints.size(), -1);
        std::vector<int> order;
        order.reserve(layout->joints.size());
        const auto take = [&](int joint, int from, int piece) {
            position[joint] = static_cast<int>(order.size());
            order.push_back(joint);
            parent.push_back(from);
            parentPiece.push_back(piece);
            towards.push_back(piece >= 0 && pieces[piece].to == joint ? 1 : -1);
        };
        for (std::size_t root = 0; root < layout->joints.size(); ++root) {
            if (position[root] >= 0) continue;
            std::size_t head = order.size();
            take(static_cast<int>(root), -1, -1);
            for (; head < order.size(); ++head) {
                const int joint = order[head];
                for (int i = adjacency.first[joint]; i < adjacency.first[joint + 1]; ++i) {
                    const Piece& piece = pieces[adjacency.piece[i]];
                    const int other = piece.from == joint ? piece.to : piece.from;
                    if (position[other] < 0) take(other, static_cast<int>(head), adjacency.piece[i]);
                }
            }
        }
    }

    // The loop that a piece closes: along it, then through the forest from its end back to its start.
    std::vector<Step> loopOf(int closing) const {
        std::vector<Step> steps{{closing, 1}};
        int at = position[layout->pieces[closing].to];
        int goal = position[layout->pieces[closing].from];
        while (at != goal) {
            // A parent has the smaller position: the later of the two climbs.
            if (at > goal) {
                steps.push_back({parentPiece[at], -towards[at]});
                at = parent[at];
            } else {
                steps.push_back({parentPiece[goal], towards[goal]});
                goal = parent[goal];
            }
        }
        return steps;
    }

    void closeLoops() {
        std::vector<char> inForest(layout->pieces.size(), 0);
        for (const int piece : parentPiece) {
            if (piece >= 0) inForest[piece] = 1;
        }
        std::vector<int> groupOfNet(static_cast<std::size_t>(layout->netCount), -1);
        for (std::size_t i = 0; i < layout->pieces.size(); ++i) {
            const Piece& piece = layout->pieces[i];
            if (inForest[i] || piece.from == piece.to) continue;
            int& group = groupOfNet[layout->joints[piece.from].net];
            if (group < 0) {
                group = static_cast<int>(groups.size());
                groups.emplace_back();
            }
            groups[group].loops.push_back(loopOf(static_cast<int>(i)));
        }
        for (LoopGroup& group : groups) factor(group);
    }

    void factor(LoopGroup& group) const {
        const auto count = static_cast<Eigen::Index>(group.loops.size());
        Eigen::MatrixXd matrix = Eigen::MatrixXd::Zero(count, count);
        std::vector<double> signOf(layout->pieces.size(), 0);
        for (Eigen::Index k = 0; k < count; ++k) {
            for (const Step step : group.loops[k]) signOf[step.piece] = step.sign;
            for (Eigen::Index m = 0; m < count; ++m) {
                for (const Step step : group.loops[m]) {
                    matrix(k, m) += signOf[step.piece] * step.sign * layout->pieces[step.piece].ohm;
                }
            }
            for (const Step step : group.loops[k]) signOf[step.piece] = 0;
        }
        group.inverse = matrix.llt().solve(Eigen::MatrixXd::Identity(count, count));
        group.drop.resize(count);
        group.current.resize(count);
    }

    void balance(LoopGroup& group, std::span<double> pieceCurrent) const {
        for (std::size_t k = 0; k < group.loops.size(); ++k) {
            double drop = 0;
            for (const Step step : group.loops[k]) {
                drop += step.sign * layout->pieces[step.piece].ohm * pieceCurrent[step.piece];
            }
            group.drop[static_cast<Eigen::Index>(k)] = drop;
        }
        group.current.noalias() = group.inverse * group.drop;
        for (std::size_t k = 0; k < group.loops.size(); ++k) {
            const double current = group.current[static_cast<Eigen::Index>(k)];
            for (const Step step : group.loops[k]) pieceCurrent[step.piece] -= step.sign * current;
        }
    }

    // What is left over at each joint but the roots.
    double worstDefect(std::span<const double> injection, std::span<const double> pieceCurrent) {
        std::ranges::fill(drawn, 0);
        for (std::size_t lead = 0; lead < injection.size(); ++lead) drawn[positionOfLead[lead]] -= injection[lead];
        for (std::size_t i = 0; i < layout->pieces.size(); ++i) {
            drawn[position[layout->pieces[i].from]] -= pieceCurrent[i];
            drawn[position[layout->pieces[i].to]] += pieceCurrent[i];
        }
        double worst = 0;
        for (std::size_t p = 0; p < drawn.size(); ++p) {
            if (parent[p] >= 0) worst = std::max(worst, std::abs(drawn[p]));
        }
        return worst;
    }
};

Flow::Flow(std::shared_ptr<const Layout> layout) : body_(std::make_unique<Body>(std::move(layout))) {}
Flow::~Flow() = default;
Flow::Flow(Flow&&) noexcept = default;
Flow& Flow::operator=(Flow&&) noexcept = default;

void Flow::solve(std::span<const double> injection, std::span<double> pieceCurrent) {
    Body& body = *body_;
    std::ranges::fill(body.drawn, 0);
    std::ranges::fill(pieceCurrent, 0);
    for (std::size_t lead = 0; lead < injection.size(); ++lead) body.drawn[body.positionOfLead[lead]] += injection[lead];
    for (std::size_t p = body.drawn.size(); p-- > 0;) {
        if (body.parent[p] < 0) continue;
        pieceCurrent[body.parentPiece[p]] = body.towards[p] * body.drawn[p];
        body.drawn[body.parent[p]] += body.drawn[p];
    }
    for (LoopGroup& group : body.groups) body.balance(group, pieceCurrent);
}

double Flow::worstDefect(std::span<const double> injection, std::span<const double> pieceCurrent) const {
    return body_->worstDefect(injection, pieceCurrent);
}

}  // namespace tiepoint
