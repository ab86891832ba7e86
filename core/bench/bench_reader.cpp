// Reading takes the text once through. Each board, part, jumper, note and pinned reading becomes an object as soon as it is
// complete; what is wrong with it is noted, not reported yet, because a file of another format or a newer
// version must be called that, wherever in the file it says so. Ends of jumpers wait until all parts are
// known. The places of the elements are kept as two offsets each, so that what validate() finds can be placed
// too: only then its element is read again.

#include "core/base/json_scan.h"
#include "core/base/json_text.h"
#include "core/base/line_counter.h"
#include "core/bench/bench_file.h"
#include "core/bench/file_head.h"
#include "core/bench/read_objects.h"
#include "core/bench/validate.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <new>
#include <optional>
#include <unordered_map>

namespace tiepoint {
namespace {

constexpr std::size_t kMostWarnings = 100;
constexpr std::string_view kFormat = "tiepoint-bench";
constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";

enum List { kBoards, kParts, kJumpers, kNotes, kPinned, kListCount };
constexpr std::array<std::string_view, kListCount> kLists = {"boards", "parts", "jumpers", "notes", "pinned"};

struct Span {
    std::size_t begin = 0, end = 0;
};

class BenchReader {
public:
    explicit BenchReader(std::string_view text) : text_(text), lines_(text) {}

    Result<ReadBench> read() {
        if (auto error = scanJson(text_, kLists, [this](JsonPiece&& piece) { take(std::move(piece)); }))
            return std::move(*error);
        if (auto trouble = head_.judge(kFormat, "bench")) return located(text_, std::move(*trouble));
        if (!trouble_) resolveEnds();
        if (trouble_) return located(text_, std::move(*trouble_));
        if (auto valid = validate(read_.bench); !valid) return locatedByPointer(valid.error());
        if (unknownCount_ > kMostWarnings) {
            read_.warnings.push_back({ErrorKind::Format,
                                      fmt::format("{} more members aren't known", unknownCount_ - kMostWarnings),
                                      {},
                                      {}});
        }
        return std::move(read_);
    }

private:
    void take(JsonPiece&& piece) {
        if (piece.list < 0) return takeMember(std::move(piece.value));
        elements_[piece.list].push_back({piece.value.begin, piece.value.end});
        if (trouble_) return;
        const std::string pointer = fmt::format("/{}/{}", kLists[piece.list], piece.index);
        UnknownMembers unknown;
        std::optional<Trouble> trouble;
        Extras* extras = nullptr;
        if (piece.list == kBoards) {
            Board& board = read_.bench.boards.emplace_back();
            trouble = readBoard(piece.value, board, unknown);
            extras = &board.extras;
        } else if (piece.list == kParts) {
            Part& part = read_.bench.parts.emplace_back();
            trouble = readPart(piece.value, part, unknown);
            extras = &part.extras;
        } else if (piece.list == kNotes) {
            Note& note = read_.bench.notes.emplace_back();
            trouble = readNote(piece.value, note, unknown);
            extras = &note.extras;
        } else if (piece.list == kPinned) {
            PinnedReading& reading = read_.bench.pinned.emplace_back();
            trouble = readPinned(piece.value, reading, unknown);
            extras = &reading.extras;
        } else {
            UnresolvedJumper& jumper = jumpers_.emplace_back();
            trouble = readJumper(piece.value, jumper, unknown);
            extras = &jumper.jumper.extras;
        }
        if (trouble) return hold(std::move(*trouble), pointer);
        for (const JsonValue* member : unknown) keep(*member, pointer, *extras);
    }

    void takeMember(JsonValue&& member) {
        if (head_.take(member)) return;
        if (member.name == "title") {
            titleBegin_ = member.begin;
            if (auto trouble = readText(member, "/title", read_.bench.title)) hold(std::move(*trouble));
        } else if (member.name == "views") {
            UnknownMembers unknown;
            SavedViews& views = read_.bench.views.emplace();
            if (auto trouble = readViews(member, views, unknown)) return hold(std::move(*trouble));
            for (const JsonValue* each : unknown) keep(*each, "/views", views.extras);
        } else if (member.name == "reveal") {
            takeDisclosure(member);
        } else if (std::find(kLists.begin(), kLists.end(), member.name) != kLists.end()) {
            hold(wrongType(member, "/" + member.name, "a list"));
        } else {
            keep(member, {}, read_.bench.extras);
        }
    }

    void takeDisclosure(const JsonValue& member) {
        disclosureBegin_ = member.begin;
        Disclosure& disclosure = read_.bench.disclosure.emplace();
        UnknownMembers unknown;
        if (auto trouble = readDisclosure(member, disclosure, unknown)) return hold(std::move(*trouble), "/reveal");
        for (const JsonValue* extra : unknown) keep(*extra, "/reveal", disclosure.extras);
    }

    void hold(Trouble trouble, const std::string& pointer = {}) {
        if (trouble_) return;
        trouble.pointer = pointer + trouble.pointer;
        trouble_ = std::move(trouble);
    }

    void keep(const JsonValue& member, const std::string& pointer, Extras& extras) {
        extras.emplace_back(member.name, canonicalJson(text_.substr(member.begin, member.end - member.begin)));
        if (++unknownCount_ > kMostWarnings) return;
        Error warning{ErrorKind::Format,
                      fmt::format("the member {} isn't known; it is kept as it is", inQuotes(member.name)),
                      {pointer + '/' + pointerToken(member.name), 0, 0},
                      {}};
        lines_.locate(member.nameBegin, warning.place);
        read_.warnings.push_back(std::move(warning));
    }

    /// Decides for each end whether it is a hole or a socket: boards and parts share one namespace.
    void resolveEnds() {
        std::unordered_map<std::string_view, const Part*> parts;
        for (const Part& part : read_.bench.parts) parts.emplace(part.id, &part);
        read_.bench.jumpers.reserve(jumpers_.size());
        for (std::size_t i = 0; i < jumpers_.size() && !trouble_; ++i) {
            UnresolvedJumper& unresolved = jumpers_[i];
            for (std::size_t end = 0; end < 2; ++end) {
                const std::string_view text = unresolved.ends[end];
                const auto owner = parts.find(text.substr(0, text.find('.')));
                auto resolved = owner == parts.end() ? holeEnd(text) : socketEnd(text, *owner->second);
                if (resolved) {
                    unresolved.jumper.ends[end] = std::move(resolved).value();
                } else {
                    hold({resolved.error().kind, resolved.error().message, fmt::format("/jumpers/{}/ends/{}", i, end),
                          unresolved.offsets[end]});
                }
            }
            read_.bench.jumpers.push_back(std::move(unresolved.jumper));
        }
    }

    static Result<JumperEnd> holeEnd(std::string_view text) {
        if (auto hole = parseHole(text)) return JumperEnd{std::move(*hole)};
        return Error{
            ErrorKind::Reference,
            fmt::format("{} is no hole and no socket; they are written like A.e12 and PS1.GND2", inQuotes(text)),
            {},
            {}};
    }

    static Result<JumperEnd> socketEnd(std::string_view text, const Part& part) {
        const std::size_t dot = text.find('.');
        const int lead = dot == std::string_view::npos ? -1 : part.kind->leadIndex(text.substr(dot + 1));
        if (lead >= 0 && part.kind->leads[lead].socket) return JumperEnd{Socket{part.id, lead}};
        const std::string message = lead < 0
                                        ? fmt::format("a {} has no socket {}", part.kind->name, inQuotes(text))
                                        : fmt::format("{} is a lead, no socket; jumpers end in holes", inQuotes(text));
        return Error{ErrorKind::Reference, message, {}, {}};
    }

    /// Finds the place of an error that knows only its pointer.
    Error locatedByPointer(Error error) const {
        LineCounter(text_).locate(offsetOf(error.place.pointer), error.place);
        return error;
    }

    std::size_t offsetOf(std::string_view pointer) const {
        if (pointer == "/title") return titleBegin_;
        if (pointer == "/reveal/lock") return disclosureBegin_;
        const std::string list = takeStep(pointer);
        const auto found = std::find(kLists.begin(), kLists.end(), list);
        if (found == kLists.end()) return 0;
        const std::string step = takeStep(pointer);
        std::size_t index = 0;
        std::from_chars(step.data(), step.data() + step.size(), index);
        const Span span = elements_[found - kLists.begin()].at(index);
        return offsetBelow(text_, span.begin, span.end, pointer);
    }

    std::string_view text_;
    LineCounter lines_;  ///< for warnings, which come in the order of the file
    ReadBench read_;
    FileHead head_;
    std::size_t titleBegin_ = 0, disclosureBegin_ = 0;
    std::vector<UnresolvedJumper> jumpers_;
    std::array<std::vector<Span>, kListCount> elements_;
    std::optional<Trouble> trouble_;  ///< the first
    std::size_t unknownCount_ = 0;
};

}  // namespace

Result<ReadBench> readBench(std::string_view text) try {
    if (text.size() > kLargestBenchBytes) return Error{ErrorKind::Format, "the file is larger than 128 MB", {}, {}};
    if (text.starts_with(kByteOrderMark)) text.remove_prefix(kByteOrderMark.size());
    return BenchReader(text).read();
} catch (const std::bad_alloc&) {
    return Error{ErrorKind::Io, "the file needs more memory than there is", {}, {}};
}

}  // namespace tiepoint
