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
#include "core/bench/jumper_ends.h"
#include "core/bench/kept_members.h"
#include "core/bench/read_objects.h"
#include "core/bench/seal.h"
#include "core/bench/validate.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <map>
#include <new>
#include <optional>

namespace tiepoint {
namespace {

constexpr std::string_view kFormat = "tiepoint-bench";

enum List { kBoards, kParts, kJumpers, kNotes, kPinned, kListCount };
constexpr std::array<std::string_view, kListCount> kLists = {"boards", "parts", "jumpers", "notes", "pinned"};

struct Span {
    std::size_t begin = 0, end = 0;
};

class BenchReader {
public:
    BenchReader(std::string_view text, const Catalogue& kinds) : text_(text), kinds_(kinds), kept_(text) {}

    Result<ReadBench> read() {
        if (auto error = scanJson(text_, kLists, [this](JsonPiece&& piece) { take(std::move(piece)); }))
            return std::move(*error);
        if (auto trouble = head_.judge(kFormat, "bench")) return located(text_, std::move(*trouble));
        if (!trouble_) resolveJumpers();
        if (trouble_) return located(text_, std::move(*trouble_));
        applyHidden(read_.bench, hidden_);
        if (auto valid = validate(read_.bench); !valid) return locatedByPointer(valid.error());
        read_.warnings = kept_.takeWarnings();
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
            trouble = readPart(piece.value, part, unknown, kinds_);
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
        members_.emplace(member.name, Span{member.begin, member.end});
        if (head_.take(member)) return;
        if (member.name == "title") {
            if (auto trouble = readText(member, "/title", read_.bench.title)) hold(std::move(*trouble));
        } else if (member.name == "views") {
            UnknownMembers unknown;
            SavedViews& views = read_.bench.views.emplace();
            if (auto trouble = readViews(member, views, unknown)) return hold(std::move(*trouble));
            for (const JsonValue* each : unknown) keep(*each, "/views", views.extras);
        } else if (member.name == "reveal") {
            takeWhole(member, read_.bench.disclosure.emplace(), readDisclosure);
        } else if (member.name == "surroundings") {
            takeWhole(member, read_.bench.surroundings.emplace(), readSurroundings);
        } else if (member.name == kHuntMember) {
            takeHunt(member);
        } else if (std::find(kLists.begin(), kLists.end(), member.name) != kLists.end()) {
            hold(wrongType(member, "/" + member.name, "a list"));
        } else {
            keep(member, {}, read_.bench.extras);
        }
    }

    template <class Item>
    void takeWhole(const JsonValue& member, Item& item,
                   std::optional<Trouble> (*read)(const JsonValue&, Item&, UnknownMembers&)) {
        const std::string pointer = '/' + member.name;
        UnknownMembers unknown;
        if (auto trouble = read(member, item, unknown)) return hold(std::move(*trouble), pointer);
        for (const JsonValue* extra : unknown) keep(*extra, pointer, item.extras);
    }

    void takeHunt(const JsonValue& member) {
        auto kept = takeHidden(text_.substr(member.begin, member.end - member.begin), hidden_);
        if (!kept) {
            return hold({ErrorKind::Format, "what this bench hides is damaged: take a fresh copy of the file",
                         '/' + member.name, member.begin});
        }
        read_.bench.extras.emplace_back(member.name, std::move(*kept));
    }

    void hold(Trouble trouble, const std::string& pointer = {}) {
        if (trouble_) return;
        trouble.pointer = pointer + trouble.pointer;
        trouble_ = std::move(trouble);
    }

    void keep(const JsonValue& member, const std::string& pointer, Extras& extras) {
        kept_.keep(member, pointer, extras);
    }

    void resolveJumpers() {
        const PartKinds kinds = kindsOf(read_.bench);
        read_.bench.jumpers.reserve(jumpers_.size());
        for (std::size_t i = 0; i < jumpers_.size() && !trouble_; ++i) {
            if (auto trouble = resolveEnds(jumpers_[i], kinds))
                hold(std::move(*trouble), fmt::format("/jumpers/{}", i));
            read_.bench.jumpers.push_back(std::move(jumpers_[i].jumper));
        }
    }

    /// Finds the place of an error that knows only its pointer.
    Error locatedByPointer(Error error) const {
        LineCounter(text_).locate(offsetOf(error.place.pointer), error.place);
        return error;
    }

    std::size_t offsetOf(std::string_view pointer) const {
        const std::string first = takeStep(pointer);
        const auto found = std::find(kLists.begin(), kLists.end(), first);
        if (found == kLists.end()) {
            const auto member = members_.find(first);
            return member == members_.end() ? 0 : offsetOf(member->second, pointer);
        }
        const std::string step = takeStep(pointer);
        std::size_t index = 0;
        std::from_chars(step.data(), step.data() + step.size(), index);
        return offsetOf(elements_[found - kLists.begin()].at(index), pointer);
    }

    std::size_t offsetOf(Span span, std::string_view pointer) const {
        return offsetBelow(text_, span.begin, span.end, pointer);
    }

    std::string_view text_;
    const Catalogue& kinds_;
    KeptMembers kept_;
    ReadBench read_;
    FileHead head_;
    std::map<std::string, Span, std::less<>> members_;  ///< of the root, but for the lists
    std::vector<UnresolvedJumper> jumpers_;
    std::array<std::vector<Span>, kListCount> elements_;
    HiddenConditions hidden_;
    std::optional<Trouble> trouble_;  ///< the first
};

}  // namespace

Result<ReadBench> readBench(std::string_view text, const Catalogue& kinds) try {
    if (text.size() > kLargestBenchBytes) return Error{ErrorKind::Format, "the file is larger than 128 MB", {}, {}};
    text = withoutMark(text);
    return BenchReader(text, kinds).read();
} catch (const std::bad_alloc&) {
    return Error{ErrorKind::Io, "the file needs more memory than there is", {}, {}};
}

}  // namespace tiepoint
