#pragma once
// Flow: how each net's current divides inside its own metal, in the limit of small resistances.
//
// A net's joints and pieces form a graph; leads inject currents. A leaf-to-root sum over a spanning tree gives the current of every
// tree piece without any resistance; each surplus piece is one loop, corrected by one small prefactored system for each net.

#include "core/nets/layout.h"

#include <memory>
#include <span>
#include <vector>

namespace tiepoint {

/// The currents of the metal of one layout. Prepared once for each layout, then allocation-free. Not thread-safe.
class Flow {
public:
    explicit Flow(std::shared_ptr<const Layout> layout);
    ~Flow();
    Flow(Flow&&) noexcept;
    Flow& operator=(Flow&&) noexcept;

    /// injection: by lead, the current that leaves the metal into the part (Solution::leadInjection).
    /// pieceCurrent: by piece, positive from `from` to `to`; filled. A net whose injections don't add up to zero (floating rounding)
    /// keeps the defect at its root joint.
    void solve(std::span<const double> injection, std::span<double> pieceCurrent);
    /// Worst defect of Kirchhoff's current law at any joint but the nets' roots, A, for the arrays of a solve.
    double worstDefect(std::span<const double> injection, std::span<const double> pieceCurrent) const;

private:
    struct Body;
    std::unique_ptr<Body> body_;
};

}  // namespace tiepoint
