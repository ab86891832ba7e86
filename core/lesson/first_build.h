#pragma once
// The first build of a newcomer: a resistor, an LED, plus and minus, and the lever of the supply. Five steps, judged by the circuit that
// stands on the board, wherever its parts are: never by what was clicked. Pure functions of a snapshot; safe from any thread.

#include "core/snapshot/snapshot.h"

#include <string>
#include <vector>

namespace tiepoint {

inline constexpr int kFirstBuildSteps = 5;

struct FirstBuildAdvice {
    int step = 0;             ///< 0..4 the step to do now; 5: all done
    std::string title;        ///< "Push a resistor in"
    std::string text;         ///< how, in two sentences
    std::vector<Hole> holes;  ///< where it could go: free holes to light up
};

/// What to do next. `reached` is the step that was reached before: the last one asks for darkness, which means something only once
/// there was light.
FirstBuildAdvice firstBuildAdvice(const Snapshot& snapshot, int reached);

}  // namespace tiepoint
