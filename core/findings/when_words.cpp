#include "core/findings/when_words.h"

#include "core/base/quantity.h"
#include "core/snapshot/settled_snapshot.h"
#include "core/words/words.h"

#include <cmath>

namespace tiepoint {
namespace {

constexpr double kAtOnceSecond = 1e-5;  ///< sooner than this nobody can tell apart

double secondsRounded(double second, int digits) {
    const double step = std::pow(10, std::floor(std::log10(second)) - (digits - 1));
    return std::round(second / step) * step;
}

/// Times of what happened once are told roughly.
double roughSecond(double second) { return secondsRounded(second, 2); }

}  // namespace

std::string changeInWords(const std::vector<Throw>& all, const Bench& bench, const Digits& from, const Digits& to) {
    int changed = -1;
    for (std::size_t t = 0; t < all.size(); ++t) {
        if (from[t] == to[t]) continue;
        if (changed >= 0) return say("finding.when.several");
        changed = static_cast<int>(t);
    }
    if (changed < 0) return {};
    const std::string& part = bench.parts[all[changed].part].id;
    if (all[changed].isCap())
        return say(to[changed] != 0 ? "finding.when.pressed" : "finding.when.released", {{"part", part}});
    return say("finding.when.thrown",
               {{"part", part}, {"position", positionInWords(all[changed], bench, to[changed])}});
}

std::string whenInWords(const std::string& change, std::optional<double> second) {
    const std::string after = change.empty() ? say("finding.when.powerUp") : change;
    if (!second) return say("finding.when.again", {{"change", after}});
    if (*second < kAtOnceSecond) return say("finding.when.atOnce", {{"change", after}});
    return say("finding.when.after", {{"time", formatQuantity(roughSecond(*second), "s")}, {"change", after}});
}

std::string lastingWords(const Snapshot& snapshot) {
    if (isRepeating(snapshot))
        return say("settled.repeating",
                   {{"period", formatQuantity(secondsRounded(snapshot.settled->periodSecond, 3), "s")}});
    if (isUndecided(snapshot) && snapshot.status() == Status::Solved)
        return say("settled.undecided", {{"time", formatQuantity(roughSecond(snapshot.settled->followedSecond), "s")}});
    return {};
}

}  // namespace tiepoint
