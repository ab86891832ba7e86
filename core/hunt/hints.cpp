#include "core/hunt/hints.h"

#include "core/base/quantity.h"
#include "core/hunt/ground.h"
#include "core/slips/slip_words.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>

namespace tiepoint {
namespace {

/// A place to measure at, and what the meter shows there.
struct Stop {
    Hole hole;
    double sound = 0, now = 0;
};

/// The places at a thing, by the strips that its ends are in on the sound bench; those nearer to plus first.
std::vector<Stop> stopsAt(const HuntGround& ground, const std::string& thing, const Signs& sound, const Signs& now,
                          std::size_t position) {
    const auto layout = buildLayout(std::make_shared<const Bench>(ground.target()));
    std::set<int> strips;
    const auto add = [&](const Hole& hole) {
        strips.insert(layout->stripOfHole[static_cast<std::size_t>(layout->holeIndex(hole))]);
    };
    if (const Part* part = ground.target().findPart(thing)) {
        for (const auto& lead : part->leads)
            if (lead) add(*lead);
    }
    if (const Jumper* jumper = ground.target().findJumper(thing)) {
        for (const JumperEnd& end : jumper->ends)
            if (const auto* hole = std::get_if<Hole>(&end)) add(*hole);
    }
    std::vector<Stop> stops;
    for (std::size_t place = 0; place < ground.places().size(); ++place) {
        const Hole& hole = ground.places()[place];
        if (strips.contains(layout->stripOfHole[static_cast<std::size_t>(layout->holeIndex(hole))]))
            stops.push_back({hole, sound.volts[position][place], now.volts[position][place]});
    }
    std::ranges::stable_sort(stops, [](const Stop& a, const Stop& b) { return a.now > b.now; });
    return stops;
}

std::size_t firstDifference(const Signs& sound, const Signs& now) {
    for (std::size_t position = 0; position < sound.lights.size(); ++position) {
        for (std::size_t light = 0; light < sound.lights[position].size(); ++light)
            if (!sound.lights[position][light].isLike(now.lights[position][light])) return position;
    }
    return 0;
}

std::string stopName(const Bench& bench, const Hole& hole) { return placeName(bench, hole); }

std::string firstHint(const Bench& bench, const Stop& stop, double plusVolt, const std::string& clause) {
    const std::string where = stopName(bench, stop.hole), volts = formatQuantity(stop.now, "V", 2);
    const std::string when = clause.empty() ? "" : " " + clause;
    if (!differ(stop.now, plusVolt) && std::abs(plusVolt) > 0.1)
        return fmt::format("Plus comes as far as {}{}.", where, when);
    if (!differ(stop.now, stop.sound)) return fmt::format("At {} all is as it should be: {}{}.", where, volts, when);
    return fmt::format("At {} the meter shows {}{}; it should show {}.", where, volts, when,
                       formatQuantity(stop.sound, "V", 2));
}

}  // namespace

std::vector<std::string> hintsFor(const Bench& bench, const HiddenSlip& slip) {
    const std::string last = fmt::format("Look at {} and what it is plugged into.", slip.things.front());
    const auto target = mended(bench, slip);
    if (!target) return {"Put back what you have pulled out first.", last};
    const Bench sound = soundOf(*target);
    const HuntGround ground(std::make_shared<const Bench>(sound));
    if (!ground.black()) return {"Look at the supply first.", last};
    Signs soundSigns = ground.looksOf(sound), nowSigns = ground.looksOf(bench);
    ground.measure(sound, soundSigns);
    ground.measure(bench, nowSigns);
    const std::size_t position = firstDifference(soundSigns, nowSigns);
    const std::string clause = positionClause(sound, ground.controls(), ground.positions()[position]);
    const double plus = nowSigns.volts[position].empty() ? 0 : *std::ranges::max_element(nowSigns.volts[position]);
    const std::vector<Stop> stops = stopsAt(ground, slip.things.front(), soundSigns, nowSigns, position);
    if (stops.empty()) return {"Measure what the supply gives first.", last};
    std::vector<std::string> hints{firstHint(sound, stops.front(), plus, clause)};
    if (stops.size() > 1)
        hints.push_back(fmt::format("What lies between {} and {}?", stopName(sound, stops.front().hole),
                                    stopName(sound, stops.back().hole)));
    else
        hints.push_back(fmt::format("What is plugged in beside {}?", stopName(sound, stops.front().hole)));
    hints.push_back(last);
    return hints;
}

}  // namespace tiepoint
