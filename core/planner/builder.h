#pragma once
// From the places that a search found to a bench: parts in their holes, and a jumper for each link that is missing.

#include "core/netlist/netlist.h"
#include "core/planner/planner.h"
#include "core/planner/search.h"

#include <map>
#include <optional>
#include <set>

namespace tiepoint {

/// What a plan is made from. Refers to what the planner holds.
struct PlanGiven {
    const Netlist& circuit;
    const PlanWish& wish;
    const PlanGround& ground;
    const Terminals& terminals;
    const PlanTask& task;
    const std::set<int>& left;             ///< parts put aside
    const std::map<int, Line>& railOfNet;  ///< the supplies' nets
};

/// The part that stays where it is, or null.
const Part* keptIn(const PlanWish& wish, const std::string& id);

/// The bench with its jumpers, each between the two nearest free holes whose wire finds a way; nothing if a hand couldn't build it.
std::optional<Bench> buildPlan(const PlanGiven& given, const PlanResult& found);

}  // namespace tiepoint
