#pragma once
// What a beginner does wrong at the first build, told kindly: what it is, why by the columns, and one thing to do. A slip is told only where
// it is one: a chain the other way about, minus before plus and parts in other places are right too. Pure; safe from any thread.

#include "core/course/first_chain.h"
#include "core/lesson/first_mends.h"

#include <optional>
#include <string>
#include <vector>

namespace tiepoint {

struct FirstSlip {
    std::string headline;     ///< "Nearly. It sits one hole too far right."
    std::string reason;       ///< by the numbers of columns
    std::string action;       ///< one line: what to do, with the key
    std::vector<Hole> holes;  ///< where it belongs; may be empty
    MaybeMend mend = {};      ///< what is said to do, done
    std::string now = {},
                then = {};  ///< of the metal as it is and as it is once that is done: "a gap", "one hole left: joined"
};

std::optional<FirstSlip> firstSlip(const Snapshot& snapshot, const FirstChain& chain);

}  // namespace tiepoint
