// A part with joined legs, such as a push button, turned by a quarter about its middle: its pairs lie otherwise, and it may join for good what
// it should join when pressed.

#include "core/slips/kinds/kinds.h"
#include "core/slips/search.h"
#include "core/slips/slip_words.h"
#include "core/words/words.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace tiepoint {
namespace {

constexpr int kLastBeforeGap = 4, kFirstAfterGap = 7;  ///< rows in pitches: e is 4, f is 7
constexpr int kRowsBesideGap = 5;
constexpr int kFarthest = 4;          ///< pitches from the first leg to where it may come to be
constexpr double kMiddleReach = 2.6;  ///< pitches; a hand turns it about its middle, or about the leg that it holds

int pitchesOf(Line row) {
    const int index = static_cast<int>(row);
    return index < kRowsBesideGap ? index : index - kRowsBesideGap + kFirstAfterGap;
}

std::optional<Line> rowAt(int pitches) {
    if (pitches >= 0 && pitches <= kLastBeforeGap) return static_cast<Line>(pitches);
    const int index = pitches - kFirstAfterGap + kRowsBesideGap;
    return pitches >= kFirstAfterGap && index < kRowCount ? std::optional(static_cast<Line>(index)) : std::nullopt;
}

Point byQuarters(Point offset, int quarters) {
    for (int i = 0; i < quarters; ++i) offset = {-offset.y, offset.x};
    return offset;
}

/// A place of the board in pitches.
Point placeOfButton(const Hole& hole) {
    return {static_cast<double>(hole.number), static_cast<double>(pitchesOf(hole.line))};
}

std::optional<Hole> holeAtPlace(const Ground& ground, const std::string& board, Point place) {
    const auto row = rowAt(static_cast<int>(std::lround(place.y)));
    if (!row) return std::nullopt;
    const Hole hole{board, *row, static_cast<int>(std::lround(place.x))};
    return ground.holeIndex(hole) >= 0 ? std::optional(hole) : std::nullopt;
}

/// By how many quarters it is turned; nothing where its legs don't say.
std::optional<int> quartersOf(const Part& part) {
    const auto& legs = part.kind->package->footprint;
    for (int quarters = 0; quarters < 4; ++quarters) {
        bool fits = true;
        for (std::size_t leg = 0; leg < legs.size(); ++leg) {
            if (!part.leads[leg] || isRail(part.leads[leg]->line)) return std::nullopt;
            const Point offset = placeOfButton(*part.leads[leg]) - placeOfButton(*part.leads[0]);
            fits = fits && distance(offset, byQuarters(legs[leg] - legs[0], quarters)) < 0.1;
        }
        if (fits) return quarters;
    }
    return std::nullopt;
}

Point middleOfButton(const Package& package, Point first, int quarters) {
    Point sum;
    for (const Point leg : package.footprint) sum = sum + first + byQuarters(leg - package.footprint[0], quarters);
    return sum * (1.0 / static_cast<double>(package.footprint.size()));
}

BenchChange stoodAt(const Ground& ground, const Part& part, Point first, int quarters) {
    BenchChange change;
    const auto& legs = part.kind->package->footprint;
    for (std::size_t leg = 0; leg < legs.size(); ++leg) {
        const auto hole = holeAtPlace(ground, part.leads[0]->board, first + byQuarters(legs[leg] - legs[0], quarters));
        if (!hole) return {};
        change.leads.push_back({part.id, static_cast<int>(leg), hole});
    }
    return change;
}

void offerTurns(SlipSearch& search, const Part& part, int quarters, int away) {
    const Package& package = *part.kind->package;
    const Point first = placeOfButton(*part.leads[0]);
    const Point middle = middleOfButton(package, first, quarters);
    for (const int by : {1, 3}) {
        const int to = (quarters + by) % 4;
        for (int across = -kFarthest; across <= kFarthest; ++across) {
            for (int down = -kFarthest; down <= kFarthest; ++down) {
                const Point at = first + Point{static_cast<double>(across), static_cast<double>(down)};
                const double aside = distance(middleOfButton(package, at, to), middle);
                if (aside > kMiddleReach) continue;
                BenchChange change = stoodAt(search.ground(), part, at, to);
                if (!change.leads.empty()) search.offer(std::move(change), away, 1 / (1 + aside));
            }
        }
    }
}

void searchButtonTurned(SlipSearch& search) {
    search.eachPart([&](int index, int away) {
        const Part& part = search.ground().part(index);
        if (part.kind->package->reach != Reach::Rigid || part.kind->joined.empty()) return;
        if (const auto quarters = quartersOf(part)) offerTurns(search, part, *quarters, away);
    });
}

std::string toldButtonTurned(const Bench& bench, const Slip& slip) {
    return say("slip.button-turned", {{"part", partOf(bench, slip).id}});
}
std::string mendButtonTurned(const Bench& bench, const Slip& slip) {
    const Part& part = partOf(bench, slip);
    return say("slip.button-turned.mend", {{"part", part.id},
                                           {"lead", part.kind->leads.front().name},
                                           {"place", placeName(bench, *slip.right.leads.front().to)}});
}

}  // namespace

const SlipKind kButtonTurned{"button-turned", 4, "slip.button-turned.seen", true, searchButtonTurned, toldButtonTurned,
                             mendButtonTurned};

}  // namespace tiepoint
