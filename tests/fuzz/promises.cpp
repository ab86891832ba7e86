#include "fuzz/promises.h"

#include "core/base/embedded.h"

#include <algorithm>
#include <cstddef>

namespace tiepoint::fuzz {
namespace {

constexpr std::size_t kLongestMessage = 10'000;

}  // namespace

void promise(bool holds, const std::string& what) {
    if (!holds) throw BrokenPromise(what);
}

bool isOneLine(std::string_view text) {
    return std::none_of(text.begin(), text.end(), [](char c) { return static_cast<unsigned char>(c) < 0x20; });
}

void promiseGoodMessage(const Error& error) {
    promise(!error.message.empty(), "an error says what is wrong");
    promise(isOneLine(error.oneLine()), "an error is one line");
    promise(error.oneLine().size() < kLongestMessage, "an error can be read");
}

void promiseItsPlace(const Error& error) {
    promiseGoodMessage(error);
    promise(error.place.line >= 1 && error.place.column >= 1, "an error has its line and column: " + error.oneLine());
    promise(error.place.pointer.empty() || error.place.pointer[0] == '/', "an error has a pointer: " + error.oneLine());
}

std::vector<std::string> embedded(std::string_view folder) {
    std::vector<std::string> texts;
    for (const EmbeddedFile& file : embeddedFiles()) {
        if (file.name.starts_with(folder)) texts.emplace_back(file.text);
    }
    return texts;
}

}  // namespace tiepoint::fuzz
