#include "core/bench/cap.h"

#include "core/base/json_text.h"

namespace tiepoint {

bool isCap(std::string_view text) {
    const auto code = singleCodePoint(text);
    if (!code) return false;
    const char32_t c = *code;
    if (c < 0x80) return (c >= '0' && c <= '9') || (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z');
    const bool sign = c < 0xC0 || c == 0xD7 || c == 0xF7 || (c >= 0x2000 && c < 0x2C00) ||
                      (c >= 0x3000 && c < 0x3040) || (c >= 0xE000 && c < 0xF900) || (c >= 0xFE00 && c < 0xFE70) ||
                      c >= 0xFFE0;
    return !sign;
}

}  // namespace tiepoint
