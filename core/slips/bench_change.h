#pragma once
// A change of a bench as plain data: which lead or end is in which place, which settings are others, which jumpers come and go. What a slip
// does and what undoes it are such changes, so that a solver of variants can follow them without reading edits.
// Ids refer to the bench that is changed. Plain values; pure functions, safe from any thread.

#include "core/edit/edit.h"

#include <optional>
#include <string>
#include <vector>

namespace tiepoint {

/// A lead of a part in a hole; nothing: it hangs.
struct PlacedLead {
    std::string part;
    int lead = 0;
    std::optional<Hole> to;
    friend bool operator==(const PlacedLead&, const PlacedLead&) = default;
};

/// An end of a jumper in a hole or a socket.
struct PlacedEnd {
    std::string jumper;
    int end = 0;
    JumperEnd to;
    friend bool operator==(const PlacedEnd&, const PlacedEnd&) = default;
};

/// A value or a state of a part, by the index of its kind.
struct SetFigure {
    std::string part;
    bool state = false;
    int index = 0;
    double to = 0;
    friend bool operator==(const SetFigure&, const SetFigure&) = default;
};

/// Whether the rails of a board are broken in the middle.
struct SetRails {
    std::string board;
    Rails to = Rails::Through;
    friend bool operator==(const SetRails&, const SetRails&) = default;
};

/// What is broken in a part or a jumper that looks sound.
struct SetCondition {
    std::string id;
    Condition to = Condition::Sound;
    friend bool operator==(const SetCondition&, const SetCondition&) = default;
};

struct BenchChange {
    std::vector<PlacedLead> leads;
    std::vector<PlacedEnd> ends;
    std::vector<SetFigure> figures;
    std::vector<SetRails> rails;
    std::vector<SetCondition> conditions;
    std::vector<Jumper> added;
    std::vector<Jumper> removed;  ///< as they lie on the bench that is changed
    friend bool operator==(const BenchChange&, const BenchChange&) = default;
};

/// What brings the changed bench back. Requires that the change names only what the bench has.
BenchChange inverseOf(const Bench& bench, const BenchChange& change);

/// The change as an edit of the bench: one operation for each part, jumper and board that it touches.
Edit editOf(const Bench& bench, const BenchChange& change, std::string name);

/// The parts and jumpers that it touches, each once; boards where there are none.
std::vector<std::string> idsOf(const BenchChange& change);

}  // namespace tiepoint
