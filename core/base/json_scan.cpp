// The library's event reader does the lexing, the numbers and the UTF-8. Left to itself it stops quietly at a
// NUL, accepts duplicate names and nests without end, and its events have no positions. So:
// - a NUL is looked for beforehand;
// - offsets come from a cursor that the handler moves on from token to token. Between two events lie only
// white space, commas and
//   colons, so the next token starts after them; strings and numbers are skipped by their own shape. Each
//   byte is passed once.
// - the handler keeps the names used in each open object, and counts the depth.

#include "core/base/json_scan.h"

#include "core/base/json_text.h"
#include "core/base/line_counter.h"
#include "core/base/name_set.h"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cstdint>
#include <cstring>

namespace tiepoint {
namespace {

constexpr std::size_t kDeepest = 64;
constexpr std::size_t kMostMembers = 1'000'000;  // of one object; keeps a hostile file from filling the memory
// What a bench needs of a piece: an element, its members, and their items down to the place of a torch in an edit of the surroundings.
// Whatever is deeper or longer can only be a member that isn't known (kept as text) or an error that shows in the first items.
constexpr std::size_t kKeptLevels = 4;
constexpr std::size_t kKeptItems = 1000;

bool isSpace(char c) { return c == ' ' || c == '\n' || c == '\r' || c == '\t'; }
bool isNumberPart(char c) { return (c >= '0' && c <= '9') || c == '-' || c == '+' || c == '.' || c == 'e' || c == 'E'; }

/// The library's sentence without its labels and without a copy of the text, which may be endless.
std::string plainReason(std::string_view what) {
    if (const auto dash = what.find(" - "); dash != std::string_view::npos) what.remove_prefix(dash + 3);
    if (const auto read = what.find("; last read"); read != std::string_view::npos) what = what.substr(0, read);
    return std::string(what);
}

/// An object or list that isn't closed yet.
struct Frame {
    bool isObject = false;
    int list = -1;          ///< its elements are pieces of this list
    std::size_t index = 0;  ///< elements or names that began so far
    bool isBetween = true;  ///< no element is begun: before the first and after each
    std::string name;       ///< the latest name
    std::size_t nameBegin = 0;
    NameSet names;  ///< of an object, so far
};

class Handler {
public:
    using Take = std::function<void(JsonPiece&&)>;

    Handler(std::string_view text, std::span<const std::string_view> lists, bool split, const Take& take)
        : text_(text),
          lists_(lists),
          split_(split),
          take_(take) {}

    std::optional<Error> takeError() { return std::move(error_); }

    // The events of the library. Each returns false to stop.
    bool null() { return scalar(JsonType::Null); }
    bool boolean(bool value) { return scalar(JsonType::Bool, value ? 1.0 : 0.0); }
    bool number_integer(std::int64_t value) { return scalar(JsonType::Number, static_cast<double>(value)); }
    bool number_unsigned(std::uint64_t value) { return scalar(JsonType::Number, static_cast<double>(value)); }
    bool number_float(double value, const std::string&) { return scalar(JsonType::Number, value); }
    bool string(std::string& value) { return scalar(JsonType::String, 0, std::move(value)); }
    bool binary(std::vector<std::uint8_t>&) { return false; }  // no such thing in text
    bool start_object(std::size_t) { return open(JsonType::Object); }
    bool start_array(std::size_t) { return open(JsonType::List); }
    bool end_object() { return close(); }
    bool end_array() { return close(); }

    bool key(std::string& name) {
        Frame& frame = frames_.back();
        frame.nameBegin = nextToken();
        cursor_ = endOfToken(frame.nameBegin);
        frame.name = std::move(name);
        ++frame.index;
        frame.isBetween = false;
        if (!frame.names.insert(frame.name)) {
            return fail(ErrorKind::Format, frame.nameBegin,
                        fmt::format("the name {} stands twice", inQuotes(frame.name)));
        }
        if (frame.index > kMostMembers) {
            return fail(ErrorKind::Format, frame.nameBegin, "the object has over a million members");
        }
        return true;
    }

    bool parse_error(std::size_t position, const std::string&, const nlohmann::detail::exception& exception) {
        const bool tooLarge = dynamic_cast<const nlohmann::detail::out_of_range*>(&exception) != nullptr;
        if (tooLarge) return refuseNumber();
        const std::string reason = plainReason(exception.what());
        // A token in the wrong place is shown at its start, a token that is broken where it breaks.
        const bool misplaced = reason.starts_with("unexpected") && !reason.starts_with("unexpected end");
        const std::size_t last = std::min(position, text_.size()) - (position > 0 ? 1 : 0);
        const bool atEnd = reason.starts_with("unexpected end") || position > text_.size();
        return fail(ErrorKind::Syntax,
                    misplaced ? misplacedToken(last)
                    : atEnd   ? text_.size()
                              : last,
                    "this is not JSON: " + reason);
    }

private:
    std::size_t nextToken() const {
        std::size_t at = cursor_;
        while (at < text_.size() && (isSpace(text_[at]) || text_[at] == ',' || text_[at] == ':')) ++at;
        return at;
    }

    /// Where a token starts that the grammar forbids here, which may be a comma or a colon itself.
    std::size_t misplacedToken(std::size_t last) const {
        std::size_t at = cursor_;
        bool separated = false;
        while (at < last && (isSpace(text_[at]) || (!separated && (text_[at] == ',' || text_[at] == ':')))) {
            separated |= !isSpace(text_[at]);
            ++at;
        }
        return at;
    }

    std::size_t endOfToken(std::size_t at) const {
        if (text_[at] == '"') {
            ++at;
            while (at < text_.size() && text_[at] != '"') at += text_[at] == '\\' ? 2 : 1;
            return std::min(at + 1, text_.size());
        }
        if (text_[at] == 't' || text_[at] == 'n') return at + 4;  // true, null
        if (text_[at] == 'f') return at + 5;                      // false
        if (!isNumberPart(text_[at])) return at + 1;              // a bracket
        while (at < text_.size() && isNumberPart(text_[at])) ++at;
        return at;
    }

    bool fail(ErrorKind kind, std::size_t offset, std::string message) {
        error_ = Error{kind, std::move(message), {pointer(), 0, 0}, {}};
        LineCounter(text_).locate(offset, error_->place);
        return false;
    }

    std::string pointer() const {
        std::string path;
        for (const Frame& frame : frames_) {
            if (frame.isBetween) break;
            path += '/' + (frame.isObject ? pointerToken(frame.name) : std::to_string(frame.index - 1));
        }
        return path;
    }

    /// Notes in the open frame that a value begins.
    void begin(JsonValue& value) {
        value.begin = nextToken();
        cursor_ = endOfToken(value.begin);
        if (frames_.empty()) return;
        Frame& frame = frames_.back();
        if (frame.isObject) {
            value.name = frame.name;
            value.nameBegin = frame.nameBegin;
        } else {
            ++frame.index;
            frame.isBetween = false;
        }
    }

    /// Notes in the open frame that its value ends, and where.
    std::size_t end() {
        if (!frames_.empty()) frames_.back().isBetween = true;
        return cursor_;
    }

    bool scalar(JsonType type, double number = 0, std::string text = {}) {
        JsonValue value;
        value.type = type;
        value.number = number;
        value.text = std::move(text);
        begin(value);
        if (frames_.empty() && split_) return refuseRoot(value);
        value.end = end();
        return finish(std::move(value));
    }

    bool refuseNumber() {
        JsonValue number;
        begin(number);
        return fail(ErrorKind::Range, number.begin, "the number is too large");
    }

    bool refuseRoot(const JsonValue& root) {
        return fail(ErrorKind::Format, root.begin,
                    fmt::format("the file holds {}, not an object", typeName(root.type)));
    }

    bool open(JsonType type) {
        JsonValue value;
        value.type = type;
        begin(value);
        if (frames_.size() >= kDeepest) {
            return fail(ErrorKind::Format, value.begin, fmt::format("nested deeper than {} levels", kDeepest));
        }
        Frame frame;
        frame.isObject = type == JsonType::Object;
        if (split_ && frames_.empty() && !frame.isObject) return refuseRoot(value);
        if (split_ && frames_.size() == 1 && !frame.isObject) {
            const auto found = std::find(lists_.begin(), lists_.end(), value.name);
            if (found != lists_.end()) frame.list = static_cast<int>(found - lists_.begin());
        }
        const bool isContainerOfPieces = split_ && (frames_.empty() || frame.list >= 0);
        if (!isContainerOfPieces) values_.push_back(std::move(value));
        frames_.push_back(std::move(frame));
        return true;
    }

    bool close() {
        cursor_ = nextToken() + 1;
        const bool wasContainerOfPieces = split_ && (frames_.size() == 1 || frames_.back().list >= 0);
        frames_.pop_back();
        if (wasContainerOfPieces) {
            end();
            return true;
        }
        JsonValue value = std::move(values_.back());
        values_.pop_back();
        value.end = end();
        return finish(std::move(value));
    }

    /// A value is complete: it goes into the value around it, or out as a piece.
    bool finish(JsonValue value) {
        if (values_.empty()) {
            const bool isElement = !frames_.empty() && frames_.back().list >= 0;
            take_({isElement ? frames_.back().list : -1, isElement ? static_cast<int>(frames_.back().index) - 1 : -1,
                   std::move(value)});
            return true;
        }
        JsonValue& around = values_.back();
        const bool isMemberOfPiece = values_.size() == 1 && around.type == JsonType::Object;
        const bool isKept = isMemberOfPiece || (values_.size() <= kKeptLevels && around.items.size() < kKeptItems);
        if (isKept) around.items.push_back(std::move(value));
        return true;
    }

    std::string_view text_;
    std::span<const std::string_view> lists_;
    bool split_;  ///< hand out pieces of the root, not the root
    const Take& take_;
    std::size_t cursor_ = 0;  ///< end of the last token
    std::vector<Frame> frames_;
    std::vector<JsonValue> values_;  ///< the open values of the present piece, outermost first
    std::optional<Error> error_;
};

std::optional<Error> scan(std::string_view text, std::span<const std::string_view> lists, bool split,
                          const Handler::Take& take) {
    if (const auto nul = text.find('\0'); nul != std::string_view::npos) {
        Error error{ErrorKind::Syntax, "a NUL byte, which no text holds", {}, {}};
        LineCounter(text).locate(nul, error.place);
        return error;
    }
    Handler handler(text, lists, split, take);
    nlohmann::json::sax_parse(text.data(), text.data() + text.size(), &handler);
    return handler.takeError();
}

}  // namespace

std::string_view typeName(JsonType type) {
    constexpr std::string_view kNames[] = {"null", "true or false", "a number", "text", "a list", "an object"};
    return kNames[static_cast<std::size_t>(type)];
}

const JsonValue* JsonValue::member(std::string_view wanted) const {
    const auto found =
        std::find_if(items.begin(), items.end(), [&](const JsonValue& item) { return item.name == wanted; });
    return found == items.end() ? nullptr : &*found;
}

std::optional<Error> scanJson(std::string_view text, std::span<const std::string_view> lists,
                              const std::function<void(JsonPiece&&)>& take) {
    return scan(text, lists, true, take);
}

Result<JsonValue> parseJson(std::string_view text) {
    JsonValue root;
    if (auto error = scan(text, {}, false, [&](JsonPiece&& piece) { root = std::move(piece.value); })) {
        return std::move(*error);
    }
    return root;
}

}  // namespace tiepoint
