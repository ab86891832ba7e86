#include "core/scope/piece.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace tiepoint {

Piece3 Piece3::through(double fromSecond, double untilSecond, const std::array<double, 4>& readings) {
    const auto& [v0, v1, v2, v3] = readings;
    Piece3 piece;
    piece.fromSecond = fromSecond;
    piece.untilSecond = untilSecond;
    piece.by = {v0, (-11 * v0 + 18 * v1 - 9 * v2 + 2 * v3) / 2, 4.5 * (2 * v0 - 5 * v1 + 4 * v2 - v3),
                4.5 * (-v0 + 3 * v1 - 3 * v2 + v3)};
    // Where b + 2 c s + 3 d s^2 = 0.
    const double a = 3 * piece.by[3], half = piece.by[2], c = piece.by[1];
    const double under = half * half - a * c;
    if (!(under >= 0)) return piece;
    const double q = -(half + std::copysign(std::sqrt(under), half));
    std::array roots{a == 0 ? -1 : q / a, q == 0 ? -1 : c / q};
    if (roots[0] > roots[1]) std::swap(roots[0], roots[1]);
    for (const double root : roots)
        if (root > 0 && root < 1) piece.turns[piece.turnCount++] = root;
    return piece;
}

double Piece3::shareOf(double second) const {
    const double length = untilSecond - fromSecond;
    return length > 0 ? std::clamp((second - fromSecond) / length, 0.0, 1.0) : 1;
}

Piece3::Sums Piece3::integral(double from, double until) const {
    // Gauss and Legendre's rule of four points, exact to the seventh power (Abramowitz and Stegun, table 25.4).
    constexpr std::array kAt{0.339981043584856, 0.861136311594053}, kWeight{0.652145154862546, 0.347854845137454};
    const double middle = (from + until) / 2, half = (until - from) / 2;
    Sums sums;
    for (std::size_t i = 0; i < kAt.size(); ++i) {
        for (const double side : {-1.0, 1.0}) {
            const double value = at(middle + side * kAt[i] * half);
            sums.once += half * kWeight[i] * value;
            sums.squared += half * kWeight[i] * value * value;
        }
    }
    return sums;
}

double Piece3::passes(double level, double from, double until) const {
    double low = shareOf(from), high = shareOf(until);
    const bool rises = atShare(high) > atShare(low);
    constexpr int kHalvings = 48;
    for (int i = 0; i < kHalvings; ++i) {
        const double middle = (low + high) / 2;
        ((atShare(middle) < level) == rises ? low : high) = middle;
    }
    return secondOf(high);
}

}  // namespace tiepoint
