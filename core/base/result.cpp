#include "core/base/result.h"

#include "core/base/printable.h"

#include <fmt/format.h>

namespace tiepoint {

std::string Error::oneLine() const {
    std::string text = file;
    if (place.line > 0) text += fmt::format("{}{}:{}", text.empty() ? "" : ":", place.line, place.column);
    if (!place.pointer.empty()) text += fmt::format("{}{}", text.empty() ? "" : ": ", place.pointer);
    text += fmt::format("{}{}", text.empty() ? "" : ": ", message);
    return printable(text);
}

}  // namespace tiepoint
