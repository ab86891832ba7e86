#pragma once
// How far the figures of real parts may lie from what is printed on them. A figure of an element (ohms, volts, a junction's forward voltage)
// has a tolerance: the part's own where its kind has such a value, else a usual one of the table in tolerance.cpp, with its source beside it.
// Figures of one part that one thing sets, such as both halves of a track, move together.
// Pure; safe from any thread.

#include "core/bench/bench.h"

#include <string>
#include <string_view>
#include <vector>

namespace tiepoint {

/// One thing about a part that may be off, as a share of its figure: between -tolerance and +tolerance, any value as likely (the usual
/// assumption where nothing but the tolerance is known).
struct Uncertain {
    int part = 0;
    std::string_view what;  ///< "resistance", "voltage", "forward voltage", "current", "gain"
    double tolerance = 0;   ///< share: 0.05 is 5 %

    /// One figure that it moves.
    struct Figure {
        int spec = 0;    ///< element of the part's model
        int figure = 0;  ///< parameter of the element
    };
    std::vector<Figure> figures;
    /// The figure when the thing is off by a share of itself; `all` are the element's figures as printed.
    double (*moved)(const std::vector<double>& all, int figure, double share, double ratedAmpere) = nullptr;
};

/// Everything about a bench's parts that may be off, in the order of the parts. Instruments are taken as exact.
std::vector<Uncertain> uncertainOf(const Bench& bench);

}  // namespace tiepoint
