#pragma once
// A snapshot: everything that a view may show of one instant, as plain values. What only an edit changes (the layout, the constants of
// elements, the table of lights) stands in values that all snapshots of a revision share; what time changes is flat arrays of numbers,
// so that a running bench makes one after the other without copying a name (snapshot_maker.h).
// Immutable once made; shared between threads.

#include "core/scope/traces.h"
#include "core/snapshot/emitters.h"
#include "core/snapshot/shown_figures.h"
#include "core/solve/operating_point.h"

#include <cstdint>
#include <memory>
#include <vector>

namespace tiepoint {

/// Hands off everything.
const std::shared_ptr<const Inputs>& noInputs();

struct Settled;

struct Snapshot {
    std::uint64_t revision = 0;       ///< of the bench; a view draws nothing of another revision
    std::uint64_t inputSequence = 0;  ///< Inputs::sequence that it answers
    double timeSecond = 0;            ///< of the bench's own clock
    std::shared_ptr<const Layout> layout;
    std::shared_ptr<const Inputs> inputs = noInputs();  ///< as they were at this instant; never null
    std::shared_ptr<const Emitters> emitters;
    Solution solution;  ///< status, voltages by net, elements

    std::vector<double> leadCurrent;  ///< by lead, into the part; for joined leads each leg's own share (from the flow)
    std::vector<double> pieceCurrent;       ///< by piece, from its first joint to its second
    std::vector<double> partPower;          ///< by part, W, positive when it takes energy
    std::vector<double> turnedRadian;       ///< by part: how far its shaft has turned, between 0 and a full turn
    std::vector<double> emitterBrightness;  ///< by emitter, 0..1: of its mean light since the snapshot before
    double largestCurrentAmpere = 0;        ///< of any lead, jumper or piece
    /// Of a bench that moves and was followed to what lasts, which is what this shows; null at rest and of a mere instant.
    std::shared_ptr<const Settled> settled;

    bool moves = false;  ///< time changes the bench by itself
    // Of a bench that moves, over the time since the snapshot before; empty where all stood still.
    std::vector<double> leadMean, pieceMean;  ///< mean currents, as leadCurrent and pieceCurrent
    double largestMeanAmpere = 0;             ///< of those
    bool alternates = false;                  ///< the current of some lead goes to and fro within that time
    std::vector<double> emitterSteady;        ///< by emitter: brightness of its mean light over the last second seen
    double flashesPerSecond = 0;              ///< of the light that flashes most, as it is seen (core/light/flashes.h)
    Traces traces;                            ///< what instruments and pinned readings have followed

    Status status() const { return solution.status; }
    /// Volts of a lead above the reference; NaN if floating, off or none.
    double leadVoltage(int lead) const;
    double jumperCurrent(int jumper) const { return pieceCurrent[layout->pieceOfJumper[jumper]]; }
    /// What arrows show: the mean since the snapshot before.
    double flowOfLead(std::size_t lead) const { return leadMean.empty() ? leadCurrent[lead] : leadMean[lead]; }
    double largestFlow() const { return leadMean.empty() ? largestCurrentAmpere : largestMeanAmpere; }
    double flowOfPiece(std::size_t piece) const { return pieceMean.empty() ? pieceCurrent[piece] : pieceMean[piece]; }
    /// Of a part's only light, or of the brightest of several; 0 for parts that don't emit light.
    double brightness(int part) const;
    /// Its figures as they are shown, everywhere the same.
    const ShownFigures& shown() const { return shown_.of(*this); }

    ShownOnce shown_;
};

/// What one bench does under one set of inputs, from scratch (settled_snapshot.h); a pure function, for counterfactuals and the command
/// line.
std::shared_ptr<const Snapshot> evaluate(std::shared_ptr<const Bench> bench, const Inputs& inputs = {},
                                         const State& state = {});

}  // namespace tiepoint
