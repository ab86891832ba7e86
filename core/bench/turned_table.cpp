#include "core/bench/turned_table.h"

#include "core/bench/cable_routes.h"

#include <algorithm>
#include <cassert>
#include <numbers>

namespace tiepoint {
namespace {

constexpr double kSignRoomMm = 7;  ///< below the boards, for the words that say how to turn them back

/// A mirrored body is the same body turned: packages are symmetric about the line of their leads.
void turnPose(const Table& table, Pose& pose) {
    pose.centre = table.seen(pose.centre);
    pose.angle = std::numbers::pi - pose.angle;
    pose.body.centre = table.seen(pose.body.centre);
    pose.body.angle = std::numbers::pi - pose.body.angle;
}

}  // namespace

bool standsOnBoard(const Part& part) {
    return part.kind->package->reach != Reach::Flying &&
           std::any_of(part.leads.begin(), part.leads.end(), [](const auto& hole) { return hole.has_value(); });
}

Table turnedOver(const Bench& bench, Table table) {
    assert(!table.turned);
    table.turned = true;
    for (std::size_t i = 0; i < bench.parts.size(); ++i) {
        const Part& part = bench.parts[i];
        PartPlace& place = table.parts[i];
        const bool onBoard = standsOnBoard(part);
        if (onBoard) turnPose(table, place.pose);
        for (std::size_t lead = 0; lead < place.leadsMm.size(); ++lead) {
            if (onBoard || part.leads[lead]) place.leadsMm[lead] = table.seen(place.leadsMm[lead]);
            if (onBoard) place.exitsMm[lead] = table.seen(place.exitsMm[lead]);
        }
    }
    routeCables(bench, InOrder<Body>(), table);  // what stands on the boards is on their other side now
    // What bowed to the left of the way bows to the right of the mirrored one.
    for (Arc& arc : table.jumperArcs) arc.bow = -arc.bow, arc.lean = -arc.lean;
    const double lowest = std::max(table.allMm.bottom(), table.boardsMm.bottom() + kSignRoomMm);
    table.allMm.height = lowest - table.allMm.top;
    return table;
}

}  // namespace tiepoint
