#include "core/parts/drawer.h"

#include "core/base/quantity.h"
#include "core/parts/preferred.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>

namespace tiepoint {
namespace {

constexpr std::string_view kDrawerSeries = "E12";
constexpr std::string_view kEverything = "all";
constexpr double kLeastOhm = 0.01, kMostOhm = 1e9;
constexpr double kOhmRounding = 1e-9;

bool isSameOhm(double a, double b) { return std::abs(a - b) <= kOhmRounding * b; }

}  // namespace

ResistorDrawer::ResistorDrawer(std::vector<double> ohms) : ohms_(std::move(ohms)) {
    std::sort(ohms_.begin(), ohms_.end());
    ohms_.erase(std::unique(ohms_.begin(), ohms_.end(), isSameOhm), ohms_.end());
}

bool ResistorDrawer::holds(double ohm) const {
    if (isEverything()) return isSameOhm(nearestPreferred(kDrawerSeries, ohm), ohm);
    return std::any_of(ohms_.begin(), ohms_.end(), [ohm](double held) { return isSameOhm(held, ohm); });
}

std::vector<double> ResistorDrawer::from(double leastOhm, int most) const {
    std::vector<double> found;
    if (!(leastOhm > 0) || !std::isfinite(leastOhm)) return found;
    if (isEverything()) {
        const double least = preferredAtLeast(kDrawerSeries, leastOhm);
        for (int step = 0; step < most; ++step) found.push_back(preferredStep(kDrawerSeries, least, step));
        return found;
    }
    for (const double ohm : ohms_) {
        if (ohm >= leastOhm * (1 - kOhmRounding) && static_cast<int>(found.size()) < most) found.push_back(ohm);
    }
    return found;
}

Result<ResistorDrawer> readDrawer(std::string_view text) {
    constexpr std::string_view kBetween = " ,;\t\n\r";
    std::vector<double> ohms;
    for (std::size_t at = text.find_first_not_of(kBetween); at != std::string_view::npos;
         at = text.find_first_not_of(kBetween, at)) {
        const std::size_t end = std::min(text.find_first_of(kBetween, at), text.size());
        const std::string_view word = text.substr(at, end - at);
        at = end;
        if (word == kEverything) return ResistorDrawer();
        const auto ohm = parseQuantity(word, "ohm");
        if (!ohm || !(*ohm >= kLeastOhm && *ohm <= kMostOhm))
            return Error{ErrorKind::Range,
                         fmt::format("\"{}\" is no resistance from 0.01 ohm to 1 Gohm, such as 220 or 4k7", word)};
        ohms.push_back(*ohm);
    }
    return ResistorDrawer(std::move(ohms));
}

std::string writeDrawer(const ResistorDrawer& drawer) {
    if (drawer.isEverything()) return std::string(kEverything);
    std::vector<std::string> codes;
    for (const double ohm : drawer.ohms()) codes.push_back(formatLetterCode(ohm));
    return fmt::format("{}", fmt::join(codes, " "));
}

}  // namespace tiepoint
