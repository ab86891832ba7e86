#include "core/words/words.h"

#include "core/base/json_scan.h"

#include <fmt/format.h>

#include <algorithm>
#include <atomic>
#include <cassert>
#include <charconv>
#include <cstdio>
#include <cstdlib>
#include <limits>
#include <optional>

namespace tiepoint {
namespace {

constexpr std::string_view kEnglishFiles = "words/en/";
constexpr std::string_view kChooser = "by", kAllOthers = "other";

std::atomic<const Words*> spokenWords{nullptr};

/// Calls with each piece of a text: the text before a figure and the figure's name, which is empty at the end. False where a brace doesn't
/// close or closes nothing.
template <class Take>
bool eachPiece(std::string_view text, Take take) {
    while (true) {
        const std::size_t open = text.find('{');
        const std::string_view before = text.substr(0, open);
        if (before.find('}') != std::string_view::npos) return false;
        if (open == std::string_view::npos) {
            take(before, std::string_view());
            return true;
        }
        const std::size_t close = text.find('}', open);
        if (close == std::string_view::npos || close == open + 1) return false;
        take(before, text.substr(open + 1, close - open - 1));
        text.remove_prefix(close + 1);
    }
}

bool bracesClose(std::string_view text) {
    return eachPiece(text, [](std::string_view, std::string_view) {});
}

/// "1", "2-4": the counts that a form is for.
std::optional<std::pair<long long, long long>> countsOf(std::string_view name) {
    const auto number = [](std::string_view digits) -> std::optional<long long> {
        long long value = 0;
        const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), value);
        if (error != std::errc() || end != digits.data() + digits.size() || value < 0) return std::nullopt;
        return value;
    };
    const std::size_t dash = name.find('-');
    const auto least = number(name.substr(0, dash));
    const auto most = dash == std::string_view::npos ? least : number(name.substr(dash + 1));
    if (!least || !most || *least > *most) return std::nullopt;
    return std::pair(*least, *most);
}

Words readEnglish() {
    std::vector<EmbeddedFile> files;
    for (const EmbeddedFile& file : embeddedFiles())
        if (file.name.starts_with(kEnglishFiles)) files.push_back(file);
    Result<Words> words = Words::read(files);
    if (!words) {
        // The files are part of the program: it can't mean anything without them.
        fmt::print(stderr, "{}\n", words.error().oneLine());
        std::abort();
    }
    return std::move(words).value();
}

}  // namespace

Result<Words> Words::read(std::span<const EmbeddedFile> files) {
    Words words;
    for (const EmbeddedFile& file : files) {
        std::string wrong, at;
        const auto error = scanJson(file.text, {}, [&](JsonPiece&& piece) {
            if (!wrong.empty()) return;
            at = piece.value.name;
            Text text;
            std::optional<std::string> others;
            if (piece.value.type == JsonType::String) others = piece.value.text;
            for (const JsonValue& form : piece.value.items) {
                const auto counts = countsOf(form.name);
                if (form.type != JsonType::String)
                    wrong = "a form is text";
                else if (form.name == kChooser)
                    text.by = form.text;
                else if (form.name == kAllOthers)
                    others = form.text;
                else if (counts)
                    text.forms.push_back({counts->first, counts->second, form.text});
                else
                    wrong = "a form is for counts, such as 1 or 2-4, or for all \"other\"";
            }
            if (!wrong.empty()) return;
            if (!others) {
                wrong = "there is no text for all \"other\" counts";
            } else if (piece.value.type == JsonType::Object && text.by.empty()) {
                wrong = "\"by\" doesn't name the count that chooses the form";
            } else {
                text.forms.push_back({0, std::numeric_limits<long long>::max(), std::move(*others)});
                if (!std::ranges::all_of(text.forms, bracesClose, &Form::text)) wrong = "a brace doesn't close";
                if (!words.texts_.emplace(at, std::move(text)).second) wrong = "the id stands in another file too";
            }
        });
        if (error) {
            Error told = *error;
            told.file = file.name;
            return told;
        }
        if (!wrong.empty()) return Error{ErrorKind::Format, wrong, {"/" + at}, std::string(file.name)};
    }
    return words;
}

const Words& Words::english() {
    static const Words kEnglish = readEnglish();
    return kEnglish;
}

std::string Words::say(std::string_view id, std::initializer_list<Given> given) const {
    const auto found = texts_.find(id);
    assert(found != texts_.end());
    if (found == texts_.end()) return std::string(id);
    const Text& text = found->second;
    const auto figure = [&](std::string_view name) { return std::ranges::find(given, name, &Given::name); };
    const Form* form = &text.forms.back();
    if (!text.by.empty()) {
        const auto chooser = figure(text.by);
        assert(chooser != given.end() && chooser->count >= 0);
        const long long count = chooser == given.end() ? -1 : chooser->count;
        form = &*std::ranges::find_if(
            text.forms, [&](const Form& each) { return &each == form || (each.least <= count && count <= each.most); });
    }
    std::string said;
    eachPiece(form->text, [&](std::string_view before, std::string_view name) {
        said += before;
        if (name.empty()) return;
        const auto value = figure(name);
        assert(value != given.end());
        said += value == given.end() ? name : std::string_view(value->text);
    });
    return said;
}

std::vector<std::string_view> Words::ids() const {
    std::vector<std::string_view> ids;
    for (const auto& [id, text] : texts_) ids.push_back(id);
    return ids;
}

std::set<std::string, std::less<>> Words::figuresOf(std::string_view id) const {
    std::set<std::string, std::less<>> names;
    const auto found = texts_.find(id);
    if (found == texts_.end()) return names;
    if (!found->second.by.empty()) names.insert(found->second.by);
    for (const Form& form : found->second.forms) {
        eachPiece(form.text, [&](std::string_view, std::string_view name) {
            if (!name.empty()) names.emplace(name);
        });
    }
    return names;
}

std::string say(std::string_view id, std::initializer_list<Given> given) {
    const Words* words = spokenWords.load(std::memory_order_acquire);
    return (words == nullptr ? Words::english() : *words).say(id, given);
}

std::string sayList(std::span<const std::string> things, std::string_view pair, std::string_view lastPair) {
    if (things.empty()) return {};
    std::string list = things.front();
    for (std::size_t i = 1; i < things.size(); ++i)
        list = say(i + 1 == things.size() ? lastPair : pair, {{"first", list}, {"second", things[i]}});
    return list;
}

void speak(const Words& words) { spokenWords.store(&words, std::memory_order_release); }

}  // namespace tiepoint
