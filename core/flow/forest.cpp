#include "core/flow/forest.h"

#include <cassert>
#include <numeric>

namespace tiepoint {

namespace {

/// Pieces by joint, in one flat list.
struct Neighbours {
    std::vector<int> first;  ///< by joint, with one entry more at the end
    std::vector<int> piece;

    explicit Neighbours(const Layout& layout) : first(layout.joints.size() + 1, 0), piece(2 * layout.pieces.size()) {
        for (const Piece& p : layout.pieces) {
            ++first[p.from + 1];
            ++first[p.to + 1];
        }
        std::partial_sum(first.begin(), first.end(), first.begin());
        std::vector<int> next(first.begin(), first.end() - 1);
        for (int p = 0; p < static_cast<int>(layout.pieces.size()); ++p) {
            piece[next[layout.pieces[p].from]++] = p;
            piece[next[layout.pieces[p].to]++] = p;
        }
    }
};

}  // namespace

Forest::Forest(const Layout& layout) : positionOf(layout.joints.size(), -1) {
    const int joints = static_cast<int>(layout.joints.size());
    const Neighbours neighbours(layout);
    jointAt.reserve(joints);
    steps.reserve(joints);
    const auto take = [&](int joint, const Step& step) {
        positionOf[joint] = static_cast<int>(jointAt.size());
        jointAt.push_back(joint);
        steps.push_back(step);
    };

    std::vector<char> isRooted(layout.netCount, 0);
    for (int joint = 0; joint < joints; ++joint) {
        char& rooted = isRooted[layout.joints[joint].net];
        if (!rooted) take(joint, {-1, -1, 0});
        rooted = 1;
    }
    roots = static_cast<int>(jointAt.size());

    for (int at = 0; at < static_cast<int>(jointAt.size()); ++at) {
        const int joint = jointAt[at];
        for (int k = neighbours.first[joint]; k < neighbours.first[joint + 1]; ++k) {
            const Piece& piece = layout.pieces[neighbours.piece[k]];
            const bool runsAway = piece.from == joint;
            const int other = runsAway ? piece.to : piece.from;
            if (positionOf[other] < 0) take(other, {at, neighbours.piece[k], runsAway ? 1.0 : -1.0});
        }
    }
    assert(static_cast<int>(jointAt.size()) == joints && "the joints of a net hang together");
}

}  // namespace tiepoint
