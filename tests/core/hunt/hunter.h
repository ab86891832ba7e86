#pragma once
// A hunter for tests: holds the red tip of a bench's meter to one place after the other, in each position of the switches, and keeps what it
// shows. It solves the bench as it stands and knows nothing of what is hidden.

#include "core/hunt/judge.h"
#include "core/meter/meter.h"
#include "examiner/behaviour.h"

#include <algorithm>
#include <memory>
#include <set>
#include <string>
#include <vector>

namespace tiepoint::test {

/// The one that a hunt adds.
inline std::string meterOf(const Bench& bench) {
    return isMeter(*bench.parts.back().kind) ? bench.parts.back().id : std::string();
}

/// One free hole of every strip that something is plugged into.
inline std::vector<Hole> tipPlaces(const Bench& bench) {
    const auto layout = buildLayout(std::make_shared<const Bench>(bench));
    std::set<int> used;
    for (const Joint& joint : layout->joints)
        if (joint.hole >= 0) used.insert(layout->stripOfHole[static_cast<std::size_t>(joint.hole)]);
    std::vector<Hole> places;
    for (int hole = 0; hole < layout->holeCount(); ++hole) {
        const int strip = layout->stripOfHole[static_cast<std::size_t>(hole)];
        if (layout->jointOfHole[static_cast<std::size_t>(hole)] < 0 && used.erase(strip) > 0)
            places.push_back(layout->holeAt(hole));
    }
    return places;
}

/// The reading with the red tip in a hole, switches as a position says.
inline HuntReading readAt(Bench bench, const Hole& hole, const examiner::Position& position) {
    const std::string meter = meterOf(bench);
    bench.parts[static_cast<std::size_t>(bench.partIndex(meter))].leads[0] = hole;
    Inputs inputs;
    for (const Throw& each : throwsOf(bench)) {
        Part& part = bench.parts[static_cast<std::size_t>(each.part)];
        const auto stands = position.throws.find(part.id);
        if (stands == position.throws.end()) continue;
        if (!each.isCap())
            part.state[static_cast<std::size_t>(each.state)] = stands->second;
        else if (stands->second != 0)
            inputs.held.insert(part.id);
    }
    return {evaluate(std::make_shared<const Bench>(std::move(bench)), inputs), meter};
}

inline std::vector<HuntReading> readEverywhere(const Bench& bench) {
    std::vector<HuntReading> readings;
    for (const examiner::Position& position : examiner::positionsOf(bench)) {
        for (const Hole& place : tipPlaces(bench)) readings.push_back(readAt(bench, place, position));
    }
    return readings;
}

}  // namespace tiepoint::test
