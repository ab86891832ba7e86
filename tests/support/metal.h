#pragma once
// Random metal for tests and benchmarks of the flow: layouts made directly, below the level of boards, so that nets can have any
// shape, and currents that add up to zero in every net.

#include "core/nets/layout.h"

#include <memory>
#include <random>
#include <span>
#include <vector>

namespace tiepoint::test {

/// One net of `holes` joints, each with a lead, in strips of up to five, strips joined to a tree by jumpers, and `loops` jumpers more.
inline std::shared_ptr<const Layout> oneNet(int holes, int loops, std::mt19937& random) {
    constexpr double kStripOhm = 0.3e-3, kLeastJumperOhm = 0.04, kMostJumperOhm = 0.05;
    constexpr int kStripHoles = 5;
    std::uniform_real_distribution<double> jumperOhm(kLeastJumperOhm, kMostJumperOhm);
    auto layout = std::make_shared<Layout>();
    layout->netCount = 1;
    layout->netUsed = {1};
    const auto any = [&](int below) { return std::uniform_int_distribution<int>(0, below - 1)(random); };
    const auto jumper = [&](int from, int to) {
        const int number = static_cast<int>(layout->jumperJoints.size());
        layout->jumperJoints.push_back({from, to});
        layout->pieceOfJumper.push_back(static_cast<int>(layout->pieces.size()));
        layout->pieces.push_back({PieceKind::Jumper, from, to, jumperOhm(random), number});
    };
    for (int hole = 0; hole < holes; ++hole) {
        layout->joints.push_back({hole, hole, false, 0});
        layout->holeOfLead.push_back(hole);
        layout->jointOfLead.push_back(hole);
        layout->netOfLead.push_back(0);
        if (hole % kStripHoles != 0)
            layout->pieces.push_back({PieceKind::Strip, hole - 1, hole, kStripOhm, hole / kStripHoles});
        else if (hole > 0)
            jumper(any(hole), hole);
    }
    for (int loop = 0; loop < loops; ++loop) {
        const int from = any(holes);
        int to = any(holes - 1);
        to += to >= from;
        jumper(from, to);
    }
    layout->hubOfLead.assign(holes, -1);
    layout->pieceOfLead.assign(holes, -1);
    return layout;
}

/// Random currents of some 10 mA by lead; the first lead of each net that may draw takes what is left over.
inline std::vector<double> balancedInjection(const Layout& layout, std::mt19937& random) {
    std::uniform_real_distribution<double> ampere(-0.02, 0.02);
    std::vector<double> injection(layout.leadCount(), 0.0);
    std::vector<int> firstOfNet(layout.netCount, -1);
    for (int lead = 0; lead < layout.leadCount(); ++lead) {
        const int hub = layout.hubOfLead[lead];
        if (hub >= 0 && layout.joints[hub].lead != lead) continue;  // a joined group draws at its first lead
        int& first = firstOfNet[layout.netOfLead[lead]];
        if (first < 0) {
            first = lead;
            continue;
        }
        injection[lead] = ampere(random);
        injection[first] -= injection[lead];
    }
    return injection;
}

}  // namespace tiepoint::test
