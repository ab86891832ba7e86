#pragma once
// The first build of a newcomer: a resistor, an LED, plus and minus, and the lever of the supply. Five steps, judged by the circuit that
// stands on the board, wherever its parts are: never by what was clicked. Who slips is told what, why and one thing to do
// (core/lesson/first_slips.h). Pure functions of a snapshot; safe from any thread.

#include "core/course/lesson.h"
#include "core/lesson/first_mends.h"
#include "core/snapshot/snapshot.h"

#include <string>
#include <vector>

namespace tiepoint {

inline constexpr int kFirstBuildSteps = 5;

/// The lesson that its steps come from: captions and notes are the guide's words, claims of the form "chain" say what is done.
const Lesson& firstBuildLesson();

struct FirstBuildAdvice {
    int step = 0;             ///< 0..4 the step to do now; 5: all done
    std::string title;        ///< "Push a resistor in", or what went wrong: "Nearly. It sits one hole too far right."
    std::string text;         ///< how, or why, in two or three sentences
    std::string action;       ///< after a slip: one line that mends it; else empty
    std::vector<Hole> holes;  ///< where it could go: free holes to light up
    MaybeMend mend = {};      ///< after a slip: what the action says, done
    std::string now = {}, then = {};  ///< what is seen of the metal as it is, and as it is once that is done
};

/// What to do next. `reached` is the step that was reached before: the last one asks for darkness, which means something only once
/// there was light.
FirstBuildAdvice firstBuildAdvice(const Snapshot& snapshot, int reached);

}  // namespace tiepoint
