#include "core/light/flashes.h"

#include <algorithm>
#include <cmath>

namespace tiepoint {
namespace {

constexpr double kLightChange = 0.1, kDarker = 0.8;

}  // namespace

void Flashes::take(const std::vector<double>& light, double seconds) {
    if (lights_.size() != light.size()) lights_.assign(light.size(), {});
    now_ += seconds;
    const auto part = static_cast<long long>(std::floor(now_ * kParts));
    for (std::size_t i = 0; i < light.size(); ++i) {
        Seen& seen = lights_[i];
        for (long long p = std::max(part_ + 1, part - kParts + 1); p <= part; ++p) {
            seen.sum[static_cast<std::size_t>(p % kParts)] = 0;
            seen.length[static_cast<std::size_t>(p % kParts)] = 0;
        }
        const double now = std::clamp(light[i], 0.0, 1.0);
        seen.sum[static_cast<std::size_t>(part % kParts)] += light[i] * seconds;
        seen.length[static_cast<std::size_t>(part % kParts)] += seconds;
        const double change = now - seen.furthest;
        if (seen.way == 0 || change * seen.way > 0) {
            if (seen.way == 0 && std::abs(change) >= kLightChange) seen.way = change > 0 ? 1 : -1;
            if (seen.way != 0 || seen.turnCount == 0) seen.furthest = now;
        } else if (std::abs(change) >= kLightChange && std::min(now, seen.furthest) < kDarker) {
            seen.way = -seen.way;
            seen.furthest = now;
            seen.turns[static_cast<std::size_t>(seen.turnCount++ % kKept)] = now_;
        }
    }
    part_ = part;
}

double Flashes::perSecond() const {
    int most = 0;
    for (const Seen& seen : lights_) {
        int turns = 0;
        for (int t = std::max(0, seen.turnCount - kKept); t < seen.turnCount; ++t)
            if (seen.turns[static_cast<std::size_t>(t % kKept)] > now_ - 1) ++turns;
        most = std::max(most, turns);
    }
    return most / 2.0;  // two opposing changes are one flash
}

double Flashes::meanLight(std::size_t emitter) const {
    double sum = 0, length = 0;
    for (int p = 0; p < kParts; ++p) {
        sum += lights_[emitter].sum[static_cast<std::size_t>(p)];
        length += lights_[emitter].length[static_cast<std::size_t>(p)];
    }
    return length > 0 ? sum / length : 0;
}

}  // namespace tiepoint
