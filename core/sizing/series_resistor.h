#pragma once
// The resistor that an LED needs: from supply, LED and wanted current the exact value, and the one to take from the drawer. Pure; any thread.

#include "core/base/result.h"
#include "core/bench/bench.h"
#include "core/parts/drawer.h"
#include "core/parts/preferred.h"

#include <optional>
#include <vector>

namespace tiepoint {

struct ResistorQuestion {
    double supplyVolt = 5;
    Part light;      ///< an LED; its values say which
    int lights = 1;  ///< so many of them in series
    double wantedAmpere = 0.01;
    ResistorDrawer drawer;
    double tolerance = 0.05;  ///< of the resistors, for their bands
    double seriesOhm = 0;  ///< what holds the current back besides: inside the supply, in contacts, in another resistor
    std::vector<Part> inSeries = {};  ///< other lights and diodes of the same loop
};

struct ResistorChoice {
    double lightVolt = 0;   ///< over all lights and diodes at the wanted current
    double exactOhm = 0;    ///< what lets just the wanted current through
    double ohm = 0;         ///< the nearest in the drawer on the safe side: not less than the exact one
    double ampere = 0;      ///< with that resistor
    double watt = 0;        ///< in that resistor
    double ratingWatt = 0;  ///< the smallest usual rating that bears twice as much (common practice)
    std::optional<std::vector<BandColour>> bands;
};

/// The figures follow the parts' own laws: u = n VT ln(i / Is + 1) + Rs i for each light and diode, the rest over the resistances.
/// Errors: a part that is no LED, a current that isn't positive or above its maximum, a supply that can't drive it, a drawer without such a value.
Result<ResistorChoice> chooseResistor(const ResistorQuestion& question);

}  // namespace tiepoint
