#pragma once
// What lasts of a bench that is left alone, as settle() finds it (settle.h). Plain values; immutable once made.
//
// What lasts is the end of a steady bench; of any other the mean over a period, or over the last while where nothing repeats. A mean keeps
// Kirchhoff's laws, and the mean of power is what heats. How far figures went stands in the envelope, and the few instants that show it as a
// whole are kept.

#include "core/instant/state.h"
#include "core/solve/operating_point.h"

#include <string_view>
#include <vector>

namespace tiepoint {

enum class Ending {
    Steady,     ///< nothing changes any more
    Repeating,  ///< the same again and again
    Undecided,  ///< still changing; whoever reads this says "not yet", never "never"
};
/// "steady", "repeating", "undecided".
std::string_view endingName(Ending ending);

/// One figure from the beginning on.
struct Envelope {
    double least = 0, greatest = 0;                                              ///< on the whole way
    double leastSecond = 0, greatestSecond = 0;                                  ///< when, from the beginning
    double lastingLeast = 0, lastingGreatest = 0, mean = 0, rootMeanSquare = 0;  ///< of what lasts
};

/// An instant at which something was as far from what lasts as it ever was.
struct Extreme {
    double second = 0;     ///< from the beginning
    bool returns = false;  ///< it belongs to what lasts, and comes again
    Solution solution;
};

struct Settled {
    Ending ending = Ending::Undecided;
    double beganSecond = 0;  ///< by the bench's clock
    double followedSecond = 0;
    double periodSecond = 0;  ///< of what repeats: the longest
    Solution lasting;
    std::vector<Envelope> leadAmpere;  ///< by lead: what its elements draw out of the metal
    std::vector<Envelope> netVolt;     ///< by net; NaN where it floats
    std::vector<double> warmWatt;      ///< by part: the most power that lasted long enough to warm it
    std::vector<double>
        seenAmpere;  ///< by part: the most current that lasted long enough to be seen, if it gives light
    std::vector<double> seenSecond;  ///< when, from the beginning
    std::vector<Extreme> extremes;   ///< few: together they show each figure at its most
    State state;                     ///< what the parts remember at the end
    bool capped = false;             ///< switching was held back on the way
};

}  // namespace tiepoint
