#include "core/scope/tally.h"

#include <algorithm>
#include <cmath>

namespace tiepoint {

void Tally::add(const Piece3& piece, double from, double until, bool isAbove) {
    const Piece3::Sums part = piece.integral(from, until);
    sums_.second += until - from;
    sums_.once += part.once;
    sums_.squared += part.squared;
    if (isAbove) sums_.above += until - from;
}

void Tally::take(const Piece3& piece, double from, double until) {
    if (!(until > from)) return;
    piece.eachStretch(from, until, [&](double a, double b) {
        const double va = piece.at(a), vb = piece.at(b);
        if (isEmpty()) least_ = greatest_ = va;
        least_ = std::min({least_, va, vb});
        greatest_ = std::max({greatest_, va, vb});
        wasUnder_ = wasUnder_ || va < level_ - hysteresis_;
        const auto rise = [&] {
            if (!wasUnder_) return;
            wasUnder_ = false;
            if (rises_++ == 0) atFirstRise_ = sums_;
            atLastRise_ = sums_;
        };
        if (va >= level_) rise();
        if ((va >= level_) == (vb >= level_)) {
            add(piece, a, b, va >= level_);
        } else {
            const double at = piece.passes(level_, a, b);
            add(piece, a, at, va >= level_);
            if (vb >= level_) rise();
            add(piece, at, b, vb >= level_);
        }
        wasUnder_ = wasUnder_ || vb < level_ - hysteresis_;
        seconds_ += b - a;
    });
}

ScopeMeasures Tally::measures() const {
    ScopeMeasures found;
    if (isEmpty()) return found;
    found.least = least_;
    found.greatest = greatest_;
    Sums over = sums_;
    if (rises_ >= 2) {
        over.second = atLastRise_.second - atFirstRise_.second;
        over.once = atLastRise_.once - atFirstRise_.once;
        over.squared = atLastRise_.squared - atFirstRise_.squared;
        over.above = atLastRise_.above - atFirstRise_.above;
        found.hertz = (rises_ - 1) / over.second;
        found.duty = over.above / over.second;
    }
    found.mean = over.once / over.second;
    found.effective = std::sqrt(std::max(0.0, over.squared / over.second));
    return found;
}

}  // namespace tiepoint
