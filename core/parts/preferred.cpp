// Preferred numbers of IEC 60063. A member of a series is found by its index, counted through all decades.

#include "core/parts/preferred.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace tiepoint {
namespace {

constexpr std::array kE3 = {10, 22, 47};
constexpr std::array kE6 = {10, 15, 22, 33, 47, 68};
constexpr std::array kE12 = {10, 12, 15, 18, 22, 27, 33, 39, 47, 56, 68, 82};
constexpr std::array kE24 = {10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30,
                             33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91};
constexpr std::array kE96 = {100, 102, 105, 107, 110, 113, 115, 118, 121, 124, 127, 130, 133, 137, 140, 143,
                             147, 150, 154, 158, 162, 165, 169, 174, 178, 182, 187, 191, 196, 200, 205, 210,
                             215, 221, 226, 232, 237, 243, 249, 255, 261, 267, 274, 280, 287, 294, 301, 309,
                             316, 324, 332, 340, 348, 357, 365, 374, 383, 392, 402, 412, 422, 432, 442, 453,
                             464, 475, 487, 499, 511, 523, 536, 549, 562, 576, 590, 604, 619, 634, 649, 665,
                             681, 698, 715, 732, 750, 768, 787, 806, 825, 845, 866, 887, 909, 931, 953, 976};

struct Series {
    std::string_view name;
    std::span<const int> numbers;
};
constexpr std::array kSeries = {Series{"E3", kE3}, Series{"E6", kE6}, Series{"E12", kE12}, Series{"E24", kE24},
                                Series{"E96", kE96}};

constexpr double kMantissaRounding = 1e-9;

/// Times a power of ten, rounded once: 47 / 10 is the double nearest to 4.7, 47 * 0.1 isn't.
double scaled(int number, int exponent) {
    return exponent < 0 ? number / std::pow(10.0, -exponent) : number * std::pow(10.0, exponent);
}

/// The member of that index; index 0 is 1, the next decade begins `numbers.size()` later.
double member(std::span<const int> numbers, int index) {
    const int size = static_cast<int>(numbers.size());
    const int decade = static_cast<int>(std::floor(static_cast<double>(index) / size));
    const int digitsAfterFirst = numbers[0] == 10 ? 1 : 2;
    return scaled(numbers[index - decade * size], decade - digitsAfterFirst);
}

/// Index of the largest member that is at most the value.
int indexAtMost(std::span<const int> numbers, double value) {
    const int decade = static_cast<int>(std::floor(std::log10(value)));
    int index = (decade + 1) * static_cast<int>(numbers.size());
    while (member(numbers, index) > value * (1 + kMantissaRounding)) --index;
    return index;
}

int indexNearest(std::span<const int> numbers, double value) {
    const int below = indexAtMost(numbers, value);
    const bool nearerAbove = member(numbers, below + 1) / value < value / member(numbers, below);
    return nearerAbove ? below + 1 : below;
}

bool usable(std::span<const int> numbers, double value) {
    return !numbers.empty() && value > 0 && std::isfinite(value);
}

}  // namespace

std::span<const int> preferredNumbers(std::string_view series) {
    const auto found =
        std::find_if(kSeries.begin(), kSeries.end(), [&](const Series& known) { return known.name == series; });
    return found == kSeries.end() ? std::span<const int>() : found->numbers;
}

double nearestPreferred(std::string_view series, double value) { return preferredStep(series, value, 0); }

double preferredAtLeast(std::string_view series, double value) {
    const auto numbers = preferredNumbers(series);
    if (!usable(numbers, value)) return value;
    const int below = indexAtMost(numbers, value);
    const bool same = member(numbers, below) >= value * (1 - kMantissaRounding);
    return member(numbers, same ? below : below + 1);
}

double preferredAtMost(std::string_view series, double value) {
    const auto numbers = preferredNumbers(series);
    return usable(numbers, value) ? member(numbers, indexAtMost(numbers, value)) : value;
}

double preferredStep(std::string_view series, double value, int steps) {
    const auto numbers = preferredNumbers(series);
    return usable(numbers, value) ? member(numbers, indexNearest(numbers, value) + steps) : value;
}

}  // namespace tiepoint
