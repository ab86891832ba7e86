#include "core/bench/natural_order.h"

#include <algorithm>

namespace tiepoint {
namespace {

bool isDecimal(char c) { return c >= '0' && c <= '9'; }

/// Takes the run of digits at the front of the text, without its leading zeros.
std::string_view takeNumber(std::string_view& text) {
    const auto end = std::find_if_not(text.begin(), text.end(), isDecimal);
    std::string_view digits = text.substr(0, static_cast<std::size_t>(end - text.begin()));
    text.remove_prefix(digits.size());
    digits.remove_prefix(std::min(digits.find_first_not_of('0'), digits.size()));
    return digits;
}

/// Numbers of any length: the one with more digits is larger.
int compareNumbers(std::string_view a, std::string_view b) {
    if (a.size() != b.size()) return a.size() < b.size() ? -1 : 1;
    return a.compare(b);
}

int compareNaturally(std::string_view a, std::string_view b) {
    while (!a.empty() && !b.empty()) {
        if (isDecimal(a[0]) && isDecimal(b[0])) {
            const std::string_view numberA = takeNumber(a);
            const std::string_view numberB = takeNumber(b);
            if (const int order = compareNumbers(numberA, numberB); order != 0) return order;
            continue;
        }
        if (a[0] != b[0]) return static_cast<unsigned char>(a[0]) < static_cast<unsigned char>(b[0]) ? -1 : 1;
        a.remove_prefix(1);
        b.remove_prefix(1);
    }
    return static_cast<int>(!a.empty()) - static_cast<int>(!b.empty());
}

}  // namespace

bool naturalLess(std::string_view a, std::string_view b) {
    const int order = compareNaturally(a, b);
    // R1 and R01 name the same number; the plain text tells them apart.
    return order != 0 ? order < 0 : a < b;
}

}  // namespace tiepoint
