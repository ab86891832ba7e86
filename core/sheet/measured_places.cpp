#include "core/sheet/measured_places.h"

#include "core/base/quantity.h"
#include "core/bench/natural_order.h"
#include "core/snapshot/readings.h"
#include "core/spread/spread.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>

namespace tiepoint {
namespace {

constexpr std::size_t kMostLegs = 10;  ///< more than a lesson has time for

std::string legName(const Part& part, int lead) {
    const std::string& name = part.kind->leads[static_cast<std::size_t>(lead)].name;
    constexpr std::size_t kSign = 2;  // "1", "2b"; else "anode"
    return fmt::format("{}{} of {}", name.size() > kSign ? "" : "leg ", name, part.id);
}

int litCount(const BehaviourRow& row) {
    return static_cast<int>(std::ranges::count(row.lights, true, &LightSeen::lit));
}

std::string loopWords(const Snapshot& snapshot) {
    const auto loop = simpleLoop(snapshot);
    if (!loop || loop->drops.empty()) return {};
    constexpr std::string_view kOnce = "Once round: ";
    std::string words(kOnce);
    for (const Drop& drop : loop->drops) {
        if (drop.shown().steps() == 0) continue;  // a closed contact
        const std::string& id = snapshot.layout->bench->parts[static_cast<std::size_t>(drop.part)].id;
        words += fmt::format("{}{} over {}", words.size() == kOnce.size() ? "" : " + ", drop.shown().text(), id);
    }
    return words +
           fmt::format(" = {}. Current {}.", loop->supplyShown.text(), formatQuantity(loop->currentAmpere, "A"));
}

MeasuredPosition positionOf(const Behaviour& behaviour, const BehaviourRow& row,
                            const std::vector<TouchableLeg>& places) {
    MeasuredPosition position;
    position.title = positionInTitle(behaviour, row.digits);
    const Bench& bench = *behaviour.layout->bench;
    for (std::size_t light = 0; light < behaviour.lights.size(); ++light)
        position.lights.push_back(
            {bench.parts[static_cast<std::size_t>(behaviour.lights[light])].id, row.lights[light].lit});
    std::vector<Hole> holes;
    for (const TouchableLeg& place : places) holes.push_back(place.hole);
    const Spread spread = spreadAt(row.snapshot, holes);
    for (std::size_t i = 0; i < places.size(); ++i) {
        MeasuredPlace read{places[i].where, true, 0, 0, 0};
        if (i < spread.readings.size() && !std::isnan(spread.readings[i].nominal)) {
            const SpreadReading& volts = spread.readings[i];
            read = {places[i].where, false, volts.nominal, volts.least, volts.greatest};
        }
        position.places.push_back(std::move(read));
    }
    position.loop = loopWords(*row.snapshot);
    return position;
}

}  // namespace

std::vector<TouchableLeg> touchableLegs(const Layout& layout) {
    const Bench& bench = *layout.bench;
    std::map<int, int> members;
    for (const int net : layout.netOfLead) ++members[net];
    std::map<int, TouchableLeg> best;
    for (int p = 0; p < std::ssize(bench.parts); ++p) {
        const Part& part = bench.parts[static_cast<std::size_t>(p)];
        if (standsOnTable(part)) continue;
        for (int lead = 0; lead < std::ssize(part.leads); ++lead) {
            const auto& hole = part.leads[static_cast<std::size_t>(lead)];
            const int net = layout.netOfLead[static_cast<std::size_t>(layout.leadIndex(p, lead))];
            if (!hole || members[net] < 2) continue;
            // A bent leg is easier to touch than one under a button's body.
            const bool bends = part.kind->package->reach == Reach::Bending;
            const auto found = best.find(net);
            if (found != best.end() && !bends) continue;
            if (found != best.end() && found->second.where.starts_with("!") == false) continue;
            best[net] = {net, *hole,
                         fmt::format("{}{}, {}", bends ? "" : "!", placeInWords(bench, *hole), legName(part, lead))};
        }
    }
    std::vector<TouchableLeg> places;
    for (auto& [net, place] : best) {
        if (place.where.starts_with("!")) place.where.erase(0, 1);
        places.push_back(std::move(place));
    }
    std::ranges::sort(places, [](const TouchableLeg& a, const TouchableLeg& b) {
        return std::pair(a.hole.number, a.hole) < std::pair(b.hole.number, b.hole);
    });
    if (places.size() > kMostLegs) places.resize(kMostLegs);
    return places;
}

std::string positionInTitle(const Behaviour& behaviour, const Digits& digits) {
    const Bench& bench = *behaviour.layout->bench;
    std::vector<std::string> pressed, thrown;
    for (std::size_t c = 0; c < digits.size(); ++c) {
        const Throw& each = behaviour.controls[c];
        const std::string& id = bench.parts[static_cast<std::size_t>(each.part)].id;
        if (!each.isCap())
            thrown.push_back(fmt::format("{} {}", id, positionInWords(each, bench, digits[c])));
        else if (digits[c] != 0)
            pressed.push_back(id);
    }
    std::string title = pressed.empty() ? "Nothing pressed" : fmt::format("{} pressed", fmt::join(pressed, " and "));
    if (behaviour.controls.empty()) title = "Switched on";
    if (std::ranges::none_of(behaviour.controls, &Throw::isCap) && !thrown.empty()) title.clear();
    for (const std::string& each : thrown) title += (title.empty() ? "" : ", ") + each;
    return title;
}

std::string blackTipOf(const Layout& layout) {
    const Bench& bench = *layout.bench;
    const Part* first = nullptr;
    for (const Part& part : bench.parts) {
        if (!part.kind->isSupply || (first && naturalLess(first->id, part.id))) continue;
        first = &part;
    }
    if (!first) return {};
    const int minus = first->kind->leadIndex("-");
    if (minus < 0) return fmt::format("the minus of {}", first->id);
    const auto& hole = first->leads[static_cast<std::size_t>(minus)];
    return hole ? placeInWords(bench, *hole) : std::string();
}

std::vector<MeasuredPosition> measuredPositions(const std::shared_ptr<const Layout>& layout) {
    const auto now = evaluate(layout->bench);
    if (now->status() != Status::Solved) return {};
    const Behaviour behaviour = behaviourAround(now);
    const std::vector<TouchableLeg> places = touchableLegs(*behaviour.layout);
    std::vector<MeasuredPosition> positions{positionOf(behaviour, behaviour.rows.front(), places)};
    const BehaviourRow* brightest = nullptr;  // rows stand in the order of how many switches they throw
    for (const BehaviourRow& row : behaviour.rows) {
        if (row.status != Status::Solved || row.limiting || &row == &behaviour.rows.front()) continue;
        if (!brightest || litCount(row) > litCount(*brightest)) brightest = &row;
    }
    if (brightest) positions.push_back(positionOf(behaviour, *brightest, places));
    return positions;
}

}  // namespace tiepoint
