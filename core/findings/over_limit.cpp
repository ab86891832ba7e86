#include "core/findings/over_limit.h"

#include "core/base/capital.h"
#include "core/base/quantity.h"
#include "core/base/stopping.h"
#include "core/findings/shorted.h"
#include "core/findings/trial.h"
#include "core/words/words.h"

#include <algorithm>
#include <cmath>

namespace tiepoint {
namespace {

/// A figure has to be over its limit by more than rounding: 20.0 mA is not over 20 mA.
constexpr double kOverMargin = 1.005;
/// Beyond three times a maximum no digit is true any more: the part is ruined.
constexpr double kFarOver = 3;
constexpr double kOneCurrent = 0.01;

/// How far beyond its limit, in steps that rounding doesn't reach.
double farness(const Excess& excess) {
    constexpr double kSteps = 1e6;
    return std::round(kSteps * std::log(excess.share.share()));
}

/// Of two that are as far, that of one lead is named: it says where.
bool isWorse(const Excess& a, const Excess& b) {
    if (a.share.rating->maximum != b.share.rating->maximum) return a.share.rating->maximum;
    if (const double one = farness(a), other = farness(b); one != other) return one > other;
    return a.share.rating->leads.size() == 1 && b.share.rating->leads.size() != 1;
}

}  // namespace

std::vector<Excess> excesses(const Examination& examination, std::string_view quantity) {
    std::vector<Excess> worst;
    for (int part = 0; part < examination.partCount(); ++part) {
        if (examination.part(part).kind->isSupply) continue;
        std::optional<Excess> own;
        stopIfAsked();
        for (const Position& position : examination.allInstants()) {
            // Heat takes time, and what lasts is told with all heat on the way to it.
            if (position.passes && quantity == "power") continue;
            for (const RatingShare& share : ratingShares(*position.snapshot, part)) {
                if (share.rating->quantity != quantity || share.share() <= kOverMargin) continue;
                const Excess excess{part, share, &position};
                if ((!own || isWorse(excess, *own)) && !isShorted(*position.snapshot)) own = excess;
            }
        }
        if (own) worst.push_back(*own);
    }
    std::ranges::stable_sort(worst, isWorse);
    return worst;
}

std::string bearerInWords(const Part& part, const Rating& rating) {
    return rating.leads.size() == 1 ? capitalised(leadInWords(part, rating.leads.front())) : part.id;
}

std::string limitInWords(const Excess& excess) {
    constexpr int kTrueDigits = 9;
    const double limit = excess.share.limit;
    if (!(limit > 0) || !std::isfinite(limit)) return formatSetting(limit, excess.share.unit);
    const double scale = std::pow(10.0, kTrueDigits - std::ceil(std::log10(limit)));
    return formatSetting(std::round(limit * scale) / scale, excess.share.unit);
}

std::string excessInWords(const Excess& excess) {
    if (excess.share.rating->maximum && excess.share.share() > kFarOver) return say("finding.farTooMuch");
    return excess.shown().text();
}

std::vector<int> chainOf(const Snapshot& snapshot, int part) {
    std::vector<int> chain;
    const double ampere = currentThrough(snapshot, part).inAmpere;
    for (int other = 0; other < static_cast<int>(snapshot.layout->bench->parts.size()); ++other) {
        if (other == part || snapshot.layout->bench->parts[other].kind->isSupply) continue;
        if (std::abs(currentThrough(snapshot, other).inAmpere - ampere) < kOneCurrent * ampere) chain.push_back(other);
    }
    return chain;
}

}  // namespace tiepoint
