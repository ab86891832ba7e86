// The checks run in the order of the document and stop at the first offence. Ids, holes and sockets go
// through hash maps and boards through a grid, so that the time grows with the size of the bench only.
// Pointers and messages are made only once something is wrong.

#include "core/bench/validate.h"

#include "core/base/json_text.h"
#include "core/bench/cap.h"
#include "core/bench/frame_grid.h"
#include "core/bench/measurable.h"
#include "core/bench/resolve.h"

#include <fmt/format.h>

#include <cmath>
#include <cstdint>
#include <string_view>
#include <unordered_map>

namespace tiepoint {
namespace {

using Fault = std::optional<Error>;

/// A number for people; what a program computed may be none.
std::string figure(double value) { return std::isfinite(value) ? jsonNumber(value) : "no number"; }

Error wrong(ErrorKind kind, std::string pointer, std::string message) {
    return {kind, std::move(message), {std::move(pointer)}, {}};
}

bool onTable(double pitches) { return std::abs(pitches) <= kFarthestPitches; }  // NaN isn't

std::string describe(const JumperEnd& end, const Bench& bench) {
    if (const Hole* hole = std::get_if<Hole>(&end)) return toString(*hole);
    const auto& socket = std::get<Socket>(end);
    const Part* part = bench.findPart(socket.part);
    const bool named = part && socket.lead >= 0 && socket.lead < std::ssize(part->kind->leads);
    return socket.part + "." + (named ? part->kind->leads[socket.lead].name : "?");
}

/// Why a board has no such hole, for a person who counted holes.
std::string missingHole(const Board& board, const Hole& hole) {
    if (isRail(hole.line) && !board.kind->hasRails()) {
        return fmt::format("there is no hole {}: a {} board has no rails", toString(hole), board.kind->name);
    }
    return fmt::format("there is no hole {}: {} of a {} board runs from 1 to {}", toString(hole), lineName(hole.line),
                       board.kind->name, board.kind->holesOf(hole.line));
}

class Validator {
public:
    explicit Validator(const Bench& bench) : bench_(bench) {}

    Fault run() {
        if (!isText(bench_.title)) {
            return wrong(ErrorKind::Format, "/title", "the title holds a NUL or isn't valid UTF-8");
        }
        if (bench_.disclosure && (!isText(bench_.disclosure->lock) || bench_.disclosure->lock.size() > kLongestLock)) {
            return wrong(ErrorKind::Format, "/reveal/lock",
                         fmt::format("a lock is text of at most {} bytes", kLongestLock));
        }
        if (auto fault = checkSurroundings()) return fault;
        if (auto failure = checkIds()) return failure;
        if (auto failure = checkBoards()) return failure;
        if (auto failure = checkBoxes()) return failure;
        for (std::size_t i = 0; i < bench_.parts.size(); ++i) {
            if (auto failure = checkPart(bench_.parts[i], fmt::format("/parts/{}", i))) return failure;
        }
        for (std::size_t i = 0; i < bench_.jumpers.size(); ++i) {
            if (auto failure = checkJumper(bench_.jumpers[i], fmt::format("/jumpers/{}", i))) return failure;
        }
        for (std::size_t i = 0; i < bench_.notes.size(); ++i) {
            if (auto failure = checkNote(bench_.notes[i], fmt::format("/notes/{}", i))) return failure;
        }
        return checkPinned();
    }

private:
    Fault checkIds() {
        ids_.reserve(bench_.boards.size() + bench_.parts.size() + bench_.jumpers.size() + bench_.notes.size() +
                     bench_.pinned.size());
        if (auto failure = checkIdsOf(bench_.boards, "boards", boards_)) return failure;
        if (auto failure = checkIdsOf(bench_.parts, "parts", parts_)) return failure;
        std::unordered_map<std::string_view, int> jumpers, notes, pinned;
        if (auto failure = checkIdsOf(bench_.jumpers, "jumpers", jumpers)) return failure;
        if (auto failure = checkIdsOf(bench_.notes, "notes", notes)) return failure;
        return checkIdsOf(bench_.pinned, "pinned", pinned);
    }

    template <class Item>
    Fault checkIdsOf(const std::vector<Item>& items, const char* list,
                     std::unordered_map<std::string_view, int>& indices) {
        indices.reserve(items.size());
        for (int i = 0; i < std::ssize(items); ++i) {
            const std::string& id = items[i].id;
            const auto pointer = [&] { return fmt::format("/{}/{}/id", list, i); };
            if (!isId(id)) {
                return wrong(ErrorKind::Format, pointer(),
                             fmt::format("{} is no id: up to 32 letters, digits and _, a letter first", inQuotes(id)));
            }
            const auto [first, isNew] = ids_.try_emplace(id, list);
            if (!isNew) {
                return wrong(ErrorKind::Reference, pointer(),
                             fmt::format("the id {} is used twice, already in {}", id, first->second));
            }
            indices.emplace(id, i);
        }
        return {};
    }

    Fault checkBoards() {
        for (int i = 0; i < std::ssize(bench_.boards); ++i) {
            const Board& board = bench_.boards[i];
            if (!board.kind) {
                return wrong(ErrorKind::Reference, fmt::format("/boards/{}/kind", i), "the board has no kind");
            }
            if (!onTable(board.atX) || !onTable(board.atY)) {
                return wrong(ErrorKind::Range, fmt::format("/boards/{}/at", i),
                             fmt::format("board {} lies off the table: at most {} pitches from the corner", board.id,
                                         kFarthestPitches));
            }
            if (const auto other = frames_.add(board.frameMm())) {
                return wrong(ErrorKind::Placement, fmt::format("/boards/{}/at", i),
                             fmt::format("board {} overlaps board {}", board.id, bench_.boards[*other].id));
            }
        }
        return {};
    }

    /// Boxes that a hand has put somewhere. All others find a free place by themselves.
    Fault checkBoxes() {
        std::vector<const Part*> boxes;
        for (std::size_t i = 0; i < bench_.parts.size(); ++i) {
            const Part& part = bench_.parts[i];
            if (!part.at || !part.kind) continue;
            const auto pointer = [&] { return fmt::format("/parts/{}/at", i); };
            if (!standsOnTable(part)) {
                return wrong(ErrorKind::Format, pointer(),
                             fmt::format("{} goes into holes: only a box has a place on the table", part.id));
            }
            if (!onTable(part.at->x) || !onTable(part.at->y)) {
                return wrong(ErrorKind::Range, pointer(),
                             fmt::format("{} stands off the table: at most {} pitches from the corner", part.id,
                                         kFarthestPitches));
            }
            if (const auto other = frames_.add(boxMm(part))) {
                const auto board = static_cast<std::size_t>(*other);
                const bool onBoard = board < bench_.boards.size();
                return wrong(ErrorKind::Placement, pointer(),
                             fmt::format("{} stands on {}{}", part.id, onBoard ? "board " : "",
                                         onBoard ? bench_.boards[board].id : boxes[board - bench_.boards.size()]->id));
            }
            boxes.push_back(&part);
        }
        return {};
    }

    Fault checkPart(const Part& part, const std::string& pointer) {
        if (!part.kind) return wrong(ErrorKind::Reference, pointer + "/kind", part.id + " has no kind");
        const PartKind& kind = *part.kind;
        if (part.leads.size() != kind.leads.size() || part.values.size() != kind.values.size() ||
            part.state.size() != kind.state.size()) {
            return wrong(ErrorKind::Format, pointer,
                         fmt::format("{} doesn't have the leads of a {}", part.id, kind.label));
        }
        if (auto failure = checkLeads(part, pointer)) return failure;
        if (auto failure = checkSettings(kind.values, part.values, pointer + "/values/")) return failure;
        if (auto failure = checkSettings(kind.state, part.state, pointer + "/state/")) return failure;
        if (auto failure = checkSupply(part, pointer)) return failure;
        return checkCap(part, pointer);
    }

    Fault checkLeads(const Part& part, const std::string& pointer) {
        leadsMm_.assign(part.leads.size(), std::nullopt);
        for (std::size_t lead = 0; lead < part.leads.size(); ++lead) {
            if (!part.leads[lead]) continue;
            const LeadSpec& spec = part.kind->leads[lead];
            const auto where = [&] { return pointer + "/leads/" + pointerToken(spec.name); };
            if (spec.socket) {
                return wrong(
                    ErrorKind::Placement, where(),
                    fmt::format("{}.{} is a socket: jumpers plug into it, it goes into no hole", part.id, spec.name));
            }
            Point at;
            if (auto failure = takeHole(*part.leads[lead], part.id, at)) {
                failure->place.pointer = where();
                return failure;
            }
            leadsMm_[lead] = at;
        }
        if (const auto reason = misfit(packageOf(part), leadsMm_)) {
            return wrong(ErrorKind::Placement, pointer + "/leads", fmt::format("{} doesn't fit: {}", part.id, *reason));
        }
        return {};
    }

    /// Notes that a hole is taken and says where it lies; fails if there is no such hole or it was taken
    /// before.
    Fault takeHole(const Hole& hole, const std::string& taker, Point& at) {
        const auto found = boards_.find(hole.board);
        if (found == boards_.end()) {
            return wrong(ErrorKind::Reference, {},
                         fmt::format("there is no hole {}: no board has the id {}", toString(hole), hole.board));
        }
        const Board& board = bench_.boards[found->second];
        if (!board.kind->has(hole.line, hole.number)) return wrong(ErrorKind::Placement, {}, missingHole(board, hole));
        const auto place =
            static_cast<std::int64_t>(found->second) << 32 | board.kind->holeIndex(hole.line, hole.number);
        const auto [other, isFree] = takers_.try_emplace(place, taker);
        if (!isFree) {
            return wrong(ErrorKind::Placement, {},
                         fmt::format("two leads in one hole: {} is taken by {}", toString(hole), other->second));
        }
        at = board.cornerMm() + board.kind->holeMm(hole.line, hole.number);
        return {};
    }

    static Fault checkSettings(const std::vector<ValueSpec>& specs, const std::vector<Setting>& settings,
                               const std::string& pointer) {
        for (std::size_t i = 0; i < specs.size(); ++i) {
            if (!settings[i]) continue;
            if (auto reason = outOfRange(specs[i], *settings[i])) {
                return wrong(ErrorKind::Range, pointer + pointerToken(specs[i].name), std::move(*reason));
            }
        }
        return {};
    }

    static std::optional<std::string> outOfRange(const ValueSpec& spec, double value) {
        const bool whole = value == std::floor(value);
        switch (spec.type) {
            case ValueType::Number:
                if (!(value >= spec.minimum && value <= spec.maximum)) {
                    return fmt::format("{} is {}; it may be {} to {}{}{}", spec.name, figure(value),
                                       jsonNumber(spec.minimum), jsonNumber(spec.maximum), spec.unit.empty() ? "" : " ",
                                       spec.unit);
                }
                if (spec.integer && !whole) {
                    return fmt::format("{} is {}; it must be a whole number", spec.name, jsonNumber(value));
                }
                return {};
            case ValueType::Choice:
                if (whole && value >= 0 && value < static_cast<double>(spec.choices.size())) return {};
                return fmt::format("{} has no choice number {}", spec.name, figure(value));
            case ValueType::Switch:
                if (value == 0 || value == 1) return {};
                return fmt::format("{} is either true or false", spec.name);
        }
        return {};
    }

    /// A source without any resistance or limit would give an endless current into a short circuit.
    static Fault checkSupply(const Part& part, const std::string& pointer) {
        if (!part.kind->isSupply) return {};
        const int resistance = part.kind->valueIndex("seriesResistance");
        const bool ideal = resistance >= 0 && part.value(resistance) <= 0;
        if (!ideal || part.kind->valueIndex("currentLimit") >= 0) return {};
        return wrong(ErrorKind::Range, pointer + "/values/seriesResistance",
                     fmt::format("{} needs a series resistance above 0 or a current limit", part.id));
    }

    static Fault checkCap(const Part& part, const std::string& pointer) {
        if (part.cap.empty()) return {};
        if (!part.kind->hasCap) {
            return wrong(ErrorKind::Format, pointer + "/cap", fmt::format("a {} has no cap", part.kind->label));
        }
        if (isCap(part.cap)) return {};
        return wrong(ErrorKind::Format, pointer + "/cap",
                     fmt::format("{} can't stand on a cap: it takes one letter or digit", inQuotes(part.cap)));
    }

    Fault checkJumper(const Jumper& jumper, const std::string& pointer) {
        for (int i = 0; i < 2; ++i) {
            auto failure = takeEnd(jumper.ends[i], jumper.id);
            if (!failure) continue;
            failure->place.pointer = fmt::format("{}/ends/{}", pointer, i);
            return failure;
        }
        if (jumper.colour < 0 || jumper.colour >= std::ssize(jumperColours())) {
            return wrong(ErrorKind::Range, pointer + "/colour", fmt::format("{} has an unknown colour", jumper.id));
        }
        return {};
    }

    /// A note may hang over a hole that is taken: it goes into none.
    Fault checkNote(const Note& note, const std::string& pointer) {
        const auto found = boards_.find(note.at.board);
        if (found == boards_.end()) {
            return wrong(ErrorKind::Reference, pointer + "/at",
                         fmt::format("there is no hole {}: no board has the id {}", toString(note.at), note.at.board));
        }
        const Board& board = bench_.boards[found->second];
        if (!board.kind->has(note.at.line, note.at.number))
            return wrong(ErrorKind::Placement, pointer + "/at", missingHole(board, note.at));
        if (!isText(note.text))
            return wrong(ErrorKind::Format, pointer + "/text", "the note holds a NUL or isn't valid UTF-8");
        if (note.text.empty() || note.text.size() > kLongestNote) {
            return wrong(ErrorKind::Range, pointer + "/text",
                         fmt::format("a note holds 1 to {} bytes of text", kLongestNote));
        }
        return {};
    }

    Fault checkHeldOver(const char* name, const char* what, const std::optional<HeldOver>& over, double least,
                        double most) const {
        if (!over) return {};
        const std::string place = fmt::format("/surroundings/{}", name);
        if (!(over->there >= least && over->there <= most)) {
            return wrong(ErrorKind::Range, fmt::format("{}/{}", place, what),
                         fmt::format("{} is {}; it may be {} to {}", what, figure(over->there), jsonNumber(least),
                                     jsonNumber(most)));
        }
        if (!onTable(over->at.x) || !onTable(over->at.y))
            return wrong(ErrorKind::Range, place + "/at", fmt::format("a {} lies on the table", name));
        return {};
    }

    Fault checkSurroundings() const {
        if (!bench_.surroundings) return {};
        const struct {
            const char* name;
            double value, least, most;
            const char* unit;
        } table[] = {{"light", bench_.surroundings->lightLux, 0, kMostLightLux, "lux"},
                     {"temperature", bench_.surroundings->temperatureCelsius, kColdestCelsius, kWarmestCelsius,
                      "degrees Celsius"}};
        for (const auto& [name, value, least, most, unit] : table) {
            if (value >= least && value <= most) continue;  // NaN isn't
            return wrong(ErrorKind::Range, fmt::format("/surroundings/{}", name),
                         fmt::format("{} is {}; it may be {} to {} {}", name, figure(value), jsonNumber(least),
                                     jsonNumber(most), unit));
        }
        if (auto fault = checkHeldOver("torch", "light", bench_.surroundings->torch, 0, kMostLightLux)) return fault;
        return checkHeldOver("hand", "temperature", bench_.surroundings->hand, kColdestCelsius, kWarmestCelsius);
    }

    Fault checkPinned() const {
        if (bench_.pinned.empty()) return {};
        const Measurable measurable(bench_);
        for (std::size_t i = 0; i < bench_.pinned.size(); ++i) {
            const PinnedReading& reading = bench_.pinned[i];
            if (auto why = measurable.refusal(reading.of)) {
                return wrong(ErrorKind::Reference, fmt::format("/pinned/{}/{}", i, quantityOf(reading.of)),
                             std::move(*why));
            }
        }
        return {};
    }

    Fault takeEnd(const JumperEnd& end, const std::string& taker) {
        Point unused;
        if (const Hole* hole = std::get_if<Hole>(&end)) return takeHole(*hole, taker, unused);
        const auto& socket = std::get<Socket>(end);
        const auto found = parts_.find(socket.part);
        if (found == parts_.end()) {
            return wrong(ErrorKind::Reference, {}, fmt::format("no part has the id {}", inQuotes(socket.part)));
        }
        const PartKind& kind = *bench_.parts[found->second].kind;
        if (socket.lead < 0 || socket.lead >= std::ssize(kind.leads) || !kind.leads[socket.lead].socket) {
            return wrong(ErrorKind::Reference, {}, fmt::format("{} is no socket", describe(end, bench_)));
        }
        // Sockets share the map of holes: parts count downwards from -1, holes upwards from 0.
        const auto place = (-1 - static_cast<std::int64_t>(found->second)) * (std::int64_t{1} << 32) + socket.lead;
        const auto [other, isFree] = takers_.try_emplace(place, taker);
        if (isFree) return {};
        return wrong(ErrorKind::Placement, {},
                     fmt::format("two jumpers in one socket: {} is taken by {}", describe(end, bench_), other->second));
    }

    const Bench& bench_;
    std::unordered_map<std::string_view, const char*> ids_;  // id -> the list where it stands
    std::unordered_map<std::string_view, int> boards_, parts_;
    std::unordered_map<std::int64_t, std::string_view> takers_;  // hole or socket -> id of what is in it
    std::vector<std::optional<Point>> leadsMm_;
    FrameGrid frames_;  // first of the boards, then of the boxes
};

}  // namespace

Result<Done> validate(const Bench& bench) {
    if (auto failure = Validator(bench).run()) return std::move(*failure);
    return Done{};
}

}  // namespace tiepoint
