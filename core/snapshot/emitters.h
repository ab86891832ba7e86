#pragma once
// Emitters: what of a bench gives light. A part may have several, such as three colours in one body. Made once for each layout and shared
// by its snapshots. Immutable once made; safe from any thread.

#include "core/solve/operating_point.h"

#include <vector>

namespace tiepoint {

struct Emitter {
    int part = 0;             ///< part index
    int element = 0;          ///< the element whose current lights it, by its place in the solution
    double ratedAmpere = 0;   ///< at which it is as bright as it is made to be
    double exponent = 1;      ///< the power of the current by which its light rises
    double visibleShare = 1;  ///< how much of its light an eye sees; 0 for infrared
    bool bothWays = false;    ///< it doesn't mind which way its current runs

    /// Its light while so much current runs, relative to that at its rated current.
    double lightAt(double ampere) const;
};

struct Emitters {
    std::vector<Emitter> all;      ///< by part, then by model order
    std::vector<int> firstOfPart;  ///< by part, with one entry more at the end

    Emitters(const Bench& bench, const ElementPlaces& places);
};

}  // namespace tiepoint
