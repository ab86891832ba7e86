#pragma once
// A snapshot: everything that a view may show of one instant, as plain values. Immutable once made; shared between threads.

#include "core/snapshot/shown_figures.h"
#include "core/solve/operating_point.h"

#include <cstdint>
#include <memory>
#include <vector>

namespace tiepoint {

struct Snapshot {
    std::uint64_t revision = 0;       ///< of the bench; a view draws nothing of another revision
    std::uint64_t inputSequence = 0;  ///< Inputs::sequence that it answers
    std::shared_ptr<const Layout> layout;
    Inputs inputs;
    Solution solution;  ///< status, voltages by net, elements

    std::vector<double> leadCurrent;  ///< by lead, into the part; for joined leads each leg's own share (from the flow)
    std::vector<double> pieceCurrent;    ///< by piece, from its first joint to its second
    std::vector<double> partPower;       ///< by part, W, positive when it takes energy
    std::vector<double> partBrightness;  ///< by part, 0..1; 0 for parts that don't emit light
    double largestCurrentAmpere = 0;     ///< of any lead, jumper or piece

    Status status() const { return solution.status; }
    /// Volts of a lead above the reference; NaN if floating, off or none.
    double leadVoltage(int lead) const;
    double jumperCurrent(int jumper) const { return pieceCurrent[layout->pieceOfJumper[jumper]]; }
    /// Its figures as they are shown, everywhere the same.
    const ShownFigures& shown() const { return shown_.of(*this); }

    ShownOnce shown_;
};

/// Solves one bench for one set of inputs, from scratch; a pure function, for counterfactuals and the command line.
std::shared_ptr<const Snapshot> evaluate(std::shared_ptr<const Bench> bench, const Inputs& inputs = {});

}  // namespace tiepoint
