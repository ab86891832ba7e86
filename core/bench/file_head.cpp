#include "core/bench/file_head.h"

#include "core/base/json_text.h"
#include "core/base/line_counter.h"

#include <fmt/format.h>

#include <algorithm>

namespace tiepoint {
namespace {

constexpr int kKnownVersion = 1;

std::size_t offsetIn(const JsonValue& root, std::string_view pointer) {
    const JsonValue* value = &root;
    while (!pointer.empty()) {
        const std::string step = takeStep(pointer);
        const auto leadsOn = [&](const JsonValue& item) {
            if (value->type == JsonType::Object) return pointerToken(item.name) == step;
            return std::to_string(&item - value->items.data()) == step;
        };
        const auto next = std::find_if(value->items.begin(), value->items.end(), leadsOn);
        if (next == value->items.end()) break;
        value = &*next;
    }
    return value->begin;
}

}  // namespace

bool FileHead::take(JsonValue& member) {
    if (member.name != "format" && member.name != "version") return false;
    (member.name == "format" ? format_ : version_) = std::move(member);
    return true;
}

std::optional<std::string_view> FileHead::format() const {
    if (!format_ || format_->type != JsonType::String) return std::nullopt;
    return format_->text;
}

std::optional<Trouble> FileHead::judge(std::string_view format, std::string_view what) const {
    if (!format_) {
        return Trouble{ErrorKind::Format, fmt::format("the member \"format\" is missing: this is no {}", what), {}, 0};
    }
    if (format_->type != JsonType::String) return wrongType(*format_, "/format", "text");
    if (format_->text != format) {
        return Trouble{ErrorKind::Format, fmt::format("the format is {}, not \"{}\"", inQuotes(format_->text), format),
                       "/format", format_->begin};
    }
    if (!version_) return Trouble{ErrorKind::Format, "the member \"version\" is missing", {}, 0};
    if (version_->type != JsonType::Number) return wrongType(*version_, "/version", "a number");
    if (version_->number == kKnownVersion) return {};
    const std::string version = jsonNumber(version_->number);
    return Trouble{ErrorKind::Format,
                   version_->number > kKnownVersion
                       ? fmt::format("version {} is newer than this program knows ({})", version, kKnownVersion)
                       : fmt::format("there is no version {}; this program knows {}", version, kKnownVersion),
                   "/version", version_->begin};
}

std::string_view withoutMark(std::string_view text) {
    constexpr std::string_view kMark = "\xEF\xBB\xBF";
    if (text.starts_with(kMark)) text.remove_prefix(kMark.size());
    return text;
}

Error located(std::string_view text, Trouble trouble) {
    Error error{trouble.kind, std::move(trouble.message), {std::move(trouble.pointer), 0, 0}, {}};
    LineCounter(text).locate(trouble.offset, error.place);
    return error;
}

std::string takeStep(std::string_view& pointer) {
    if (pointer.empty()) return {};
    const std::size_t end = std::min(pointer.find('/', 1), pointer.size());
    std::string step(pointer.substr(1, end - 1));
    pointer.remove_prefix(end);
    return step;
}

std::size_t offsetBelow(std::string_view text, std::size_t begin, std::size_t end, std::string_view pointer) {
    const auto value = parseJson(text.substr(begin, end - begin));
    return value ? begin + offsetIn(*value, pointer) : begin;
}

}  // namespace tiepoint
