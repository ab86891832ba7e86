#pragma once
// From JSON objects of a bench file to boards, parts, jumpers, notes, pinned readings and views, one at a time. Names and types are judged
// here; whether holes are free, numbers in range and ids unique is for validate(). Internal to reading; pure
// functions.

#include "core/base/json_scan.h"
#include "core/bench/bench.h"
#include "core/parts/catalogue.h"

#include <array>
#include <optional>
#include <string>
#include <vector>

namespace tiepoint {

/// What is wrong with an object, and where in it.
struct Trouble {
    ErrorKind kind = ErrorKind::Format;
    std::string message;
    std::string pointer;     ///< from the object on: "/leads/anode"
    std::size_t offset = 0;  ///< in the text that was scanned
};

/// Members that aren't known, in the order of the file; they point into the object that was read.
using UnknownMembers = std::vector<const JsonValue*>;

/// A jumper whose ends are still text: whether "PS1.GND2" is a socket shows only once all parts are known.
struct UnresolvedJumper {
    Jumper jumper;
    std::array<std::string, 2> ends;
    std::array<std::size_t, 2> offsets = {};
};

// Each fills the last two and returns the first trouble, if any.
std::optional<Trouble> readBoard(const JsonValue& json, Board& board, UnknownMembers& unknown);
std::optional<Trouble> readPart(const JsonValue& json, Part& part, UnknownMembers& unknown, const Catalogue& kinds);
std::optional<Trouble> readJumper(const JsonValue& json, UnresolvedJumper& jumper, UnknownMembers& unknown);
std::optional<Trouble> readNote(const JsonValue& json, Note& note, UnknownMembers& unknown);
std::optional<Trouble> readPinned(const JsonValue& json, PinnedReading& reading, UnknownMembers& unknown);
std::optional<Trouble> readViews(const JsonValue& json, SavedViews& views, UnknownMembers& unknown);

/// The words of a file for the ways of the arrows, in the order of Arrows.
inline constexpr std::array<std::string_view, 3> kArrowsNames = {"off", "conventional", "electrons"};
std::optional<Trouble> readDisclosure(const JsonValue& json, Disclosure& disclosure, UnknownMembers& unknown);
std::optional<Trouble> readSurroundings(const JsonValue& json, SaidSurroundings& surroundings, UnknownMembers& unknown);

/// Takes a member that must be text; the pointer says where the member stands.
std::optional<Trouble> readText(const JsonValue& member, const std::string& pointer, std::string& text);
/// The trouble of a value that has the wrong type.
Trouble wrongType(const JsonValue& value, const std::string& pointer, std::string_view expected);

}  // namespace tiepoint
