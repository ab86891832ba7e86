#include "core/base/utf8.h"

#include <array>
#include <cstddef>

namespace tiepoint {

std::optional<char32_t> takeCodePoint(std::string_view& text) {
    if (text.empty()) return std::nullopt;
    const auto first = static_cast<unsigned char>(text[0]);
    const std::size_t size = first < 0x80   ? 1
                             : first < 0xC2 ? 0
                             : first < 0xE0 ? 2
                             : first < 0xF0 ? 3
                             : first < 0xF5 ? 4
                                            : 0;
    if (size == 0 || text.size() < size) return std::nullopt;
    char32_t code = size == 1 ? first : first & (0xFFu >> (size + 1));
    for (const char byte : text.substr(1, size - 1)) {
        if (!isContinuation(byte)) return std::nullopt;
        code = (code << 6) | (static_cast<unsigned char>(byte) & 0x3Fu);
    }
    constexpr std::array<char32_t, 5> kSmallest = {0, 0, 0x80, 0x800, 0x10000};
    if (code < kSmallest[size] || code > 0x10FFFF || (code >= 0xD800 && code < 0xE000)) return std::nullopt;
    text.remove_prefix(size);
    return code;
}

}  // namespace tiepoint
