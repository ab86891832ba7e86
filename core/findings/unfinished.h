#pragma once
// A bench that isn't done yet: an end is open, and nothing on it has worked so far. That is no fault, so nothing is found wrong with what
// is still open; what is dangerous, what can't be built, and circuits beside it that are whole are told all the same.
//
// What hangs together by parts, without going through a supply, is one circuit. A circuit is open where a part's leg or a jumper's end
// meets nothing else, and where it doesn't reach both ends of a supply. Switches are taken for closed: an open switch leaves nothing to do.
// Pure functions, linear in the bench; safe from any thread.

#include "core/findings/finding.h"

#include <optional>
#include <string>
#include <vector>

namespace tiepoint {

/// One place where something is still to be joined.
struct OpenEnd {
    std::vector<std::string> things;  ///< parts and jumpers that it belongs to
    std::optional<Hole> hole;         ///< where it ends; nothing if it hangs free or it is no one place
    std::string what;                 ///< "D1, shorter leg, to minus"
    std::string place;                ///< "e14, alone in its column"
    friend bool operator==(const OpenEnd&, const OpenEnd&) = default;
};

/// What is still open on a bench, and which of its circuits are. Empty where it is finished or has worked.
struct Unfinished {
    std::vector<OpenEnd> open;
    std::vector<std::string> things;  ///< parts and jumpers of circuits that are still open, sorted
    bool isEmpty() const { return open.empty(); }
};

/// Whether the bench does what it is for at this instant: a light is lit, or a meter has something to show.
bool works(const Snapshot& snapshot);

/// `hasWorked`: the bench has worked before, so that what is open now was opened.
Unfinished unfinished(const Snapshot& snapshot, bool hasWorked);

/// Whether a finding is told of a bench that is so far: all of them where nothing is open; else those that can't wait, and graver ones than
/// remarks that are about none of the open circuits.
bool isTold(const Unfinished& unfinished, const Finding& finding);

}  // namespace tiepoint
