#pragma once
// The bench: the document. Plain values without Qt; everything on screen is derived from it and only edits change it.
// Shared between threads as std::shared_ptr<const Bench>; never changed once shared.

#include "core/bench/condition.h"
#include "core/bench/extras.h"
#include "core/bench/pinned.h"
#include "core/bench/views.h"
#include "core/board/hole.h"
#include "core/instant/surroundings.h"
#include "core/parts/part_kind.h"

#include <array>
#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace tiepoint {

struct Board {
    std::string id;
    const BoardKind* kind = nullptr;
    double atX = 0, atY = 0;  ///< top left corner, in pitches
    Rails rails = Rails::Through;
    Labels labels = Labels::ATop;
    Extras extras;

    Point cornerMm() const { return {atX * kPitchMm, atY * kPitchMm}; }
    Rect frameMm() const { return {cornerMm().x, cornerMm().y, kind->widthMm, kind->heightMm}; }
    friend bool operator==(const Board&, const Board&) = default;
};

/// A number, a choice's index or a switch (0, 1); nothing where the file leaves the default.
using Setting = std::optional<double>;

struct Part {
    std::string id;
    const PartKind* kind = nullptr;
    std::vector<std::optional<Hole>> leads;  ///< by the kind's lead index; nothing: hangs free (always for sockets)
    std::vector<Setting> values;             ///< by the kind's value index
    std::vector<Setting> state;              ///< by the kind's state index
    std::string cap;                         ///< letter on a button's cap, or empty
    std::optional<Point> at;  ///< of a box that a hand has put somewhere on the table: its top left corner, in pitches
    Extras extras;
    Condition condition = Condition::Sound;

    /// The value in force, the default where unset. Index as in the kind.
    double value(int index) const { return values[index].value_or(kind->values[index].fallback); }
    double stateValue(int index) const { return state[index].value_or(kind->state[index].fallback); }
    friend bool operator==(const Part&, const Part&) = default;
};

/// Whether it is a box that stands on the table: a supply or an instrument.
bool standsOnTable(const Part& part);
/// Where such a box stands, mm. Requires that it has a place.
Rect boxMm(const Part& part);
/// Nothing lies farther from the corner of the table, in pitches along each edge.
inline constexpr double kFarthestPitches = 1e6;  // a table of 2.5 km; beyond it, doubles lose the tenth of a micrometre

/// A part of that kind with every lead hanging and every value at its default.
Part makePart(const PartKind& kind, std::string id);

/// A socket of a part, by the part's id and the kind's lead index.
struct Socket {
    std::string part;
    int lead = 0;
    friend auto operator<=>(const Socket&, const Socket&) = default;
    friend bool operator==(const Socket&, const Socket&) = default;
};

using JumperEnd = std::variant<Hole, Socket>;

struct Jumper {
    std::string id;
    std::array<JumperEnd, 2> ends;
    int colour = 0;     ///< index into jumperColours()
    bool flat = false;  ///< cut to length and laid straight on the board, instead of an arc
    Extras extras;
    Condition condition = Condition::Sound;
    friend bool operator==(const Jumper&, const Jumper&) = default;
};

/// Words pinned to a hole. They take no room in it and mean nothing electrical.
struct Note {
    std::string id;
    Hole at;
    std::string text;
    Extras extras;
    friend bool operator==(const Note&, const Note&) = default;
};
/// The longest text of a note, in bytes.
inline constexpr std::size_t kLongestNote = 400;

/// How much of what is found is shown: each level adds to the one before.
enum class Reveal { Nothing, Place, Proof, Mend };

/// What a bench says about that, for whoever works at it.
struct Disclosure {
    Reveal level = Reveal::Proof;
    std::string lock;  ///< digest of a pass phrase without which no more is shown, as ui makes it; empty: not locked
    Extras extras;
    friend bool operator==(const Disclosure&, const Disclosure&) = default;
};
/// The longest digest, in bytes.
inline constexpr std::size_t kLongestLock = 400;

/// What a bench says of its surroundings.
struct SaidSurroundings : Surroundings {
    Extras extras;
    friend bool operator==(const SaidSurroundings&, const SaidSurroundings&) = default;
};

struct Bench {
    std::string title;
    std::optional<Disclosure> disclosure;          ///< nothing where the bench doesn't say
    std::optional<SaidSurroundings> surroundings;  ///< nothing where the bench doesn't say: the usual ones
    std::vector<Board> boards;
    std::vector<Part> parts;
    std::vector<Jumper> jumpers;
    std::vector<Note> notes;
    std::vector<PinnedReading> pinned;
    std::optional<SavedViews> views;  ///< as it was left; nothing: nobody has looked at it yet
    Extras extras;
    friend bool operator==(const Bench&, const Bench&) = default;

    const Board* findBoard(std::string_view id) const;
    const Part* findPart(std::string_view id) const;
    const Jumper* findJumper(std::string_view id) const;
    const Note* findNote(std::string_view id) const;
    const PinnedReading* findPinned(std::string_view id) const;
    int partIndex(std::string_view id) const;    ///< -1 if there is none
    int jumperIndex(std::string_view id) const;  ///< -1 if there is none
};

/// A new bench: a half board "A" and a bench supply PS1, switched on, in rail hole 3 of top+ and bottom-;
/// jumpers that tie nothing else. Title "New bench".
Bench makeNewBench();

/// Centre of a hole on the bench in mm; nothing if the board or the hole doesn't exist.
std::optional<Point> holeMm(const Bench& bench, const Hole& hole);

/// The smallest unused id with that prefix: "R1", "R2", ... One namespace for boards, parts, jumpers, notes and pinned readings.
std::string freeId(const Bench& bench, std::string_view prefix);

/// Whether the text is an id: [A-Za-z][A-Za-z0-9_]{0,31}.
bool isId(std::string_view text);

}  // namespace tiepoint
