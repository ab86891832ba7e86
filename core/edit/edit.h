#pragma once
// Edits: every change of a bench, as a value. An edit is a named list of operations, applied as one and undone as one.
// Undo, mends, lessons and the command line use the same edits.

#include "core/base/result.h"
#include "core/bench/bench.h"

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace tiepoint {

/// Puts a whole object at a place of its list (-1: at the end).
struct AddBoard {
    Board board;
    int at = -1;
};
struct AddPart {
    Part part;
    int at = -1;
};
struct AddJumper {
    Jumper jumper;
    int at = -1;
};
struct AddNote {
    Note note;
    int at = -1;
};
struct AddPinned {
    PinnedReading reading;
    int at = -1;
};
/// Takes the object with that id away, whichever kind it is.
struct Remove {
    std::string id;
};
/// Puts a new content in place of the object with the same id.
struct ReplaceBoard {
    Board board;
};
struct ReplacePart {
    Part part;
};
struct ReplaceJumper {
    Jumper jumper;
};
struct ReplaceNote {
    Note note;
};
struct SetTitle {
    std::string title;
};
struct SetDisclosure {
    std::optional<Disclosure> disclosure;
};
struct SetSurroundings {
    std::optional<SaidSurroundings> surroundings;
};

using Operation = std::variant<AddBoard, AddPart, AddJumper, AddNote, AddPinned, Remove, ReplaceBoard, ReplacePart,
                               ReplaceJumper, ReplaceNote, SetTitle, SetDisclosure, SetSurroundings>;

struct Edit {
    std::string name;  ///< as the history shows it: "Move R1"
    std::vector<Operation> operations;
};

struct Applied {
    Bench bench;
    Edit inverse;  ///< applied to `bench` it gives back the old bench exactly, order of the lists included
};

/// Applies an edit. Pinned readings whose hole, part or jumper is gone afterwards go too, and come back with the inverse. Fails, changing nothing, if an id doesn't exist or the result isn't valid; the message says why in plain words.
Result<Applied> apply(const Bench& bench, const Edit& edit);

// The usual edits, named. Each returns the edit; apply() judges it.

/// Removes parts, jumpers and notes and, with a part that has sockets, the jumpers plugged into it.
Edit removeEdit(const Bench& bench, const std::vector<std::string>& ids);
/// Sets one value, by name. Requires that the part and value exist.
Edit setValueEdit(const Bench& bench, std::string_view partId, std::string_view value, double to);
/// Pins a reading of what can be measured, under a new id; or takes away the one that measures the same.
Edit pinEdit(const Bench& bench, const Measurand& of);
Edit setStateEdit(const Bench& bench, std::string_view partId, std::string_view state, double to);

}  // namespace tiepoint
