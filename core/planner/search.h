#pragma once
// The search of the planner: things on one board, moved about until their cost is small.

#include "core/base/work_clock.h"
#include "core/planner/thing.h"

#include <array>

namespace tiepoint {

/// What the board has to be for one circuit.
struct PlanTask {
    std::vector<PlanThing> things;
    int nets = 0;                          ///< those of the circuit and one for each lead that joins nothing
    std::vector<int> netOfRail;            ///< by strip of a rail: its net, or -1; other strips -1
    std::vector<char> isRailNet;           ///< by net
    std::vector<std::array<int, 2>> flow;  ///< by thing: its leads towards plus and minus, or -1
    std::vector<int> rank;                 ///< by thing: its layer in the direction of current
};

/// Two strips of one net that nothing joins yet.
struct PlanLink {
    int net = 0;
    int from = 0, to = 0;  ///< strips
};

struct PlanResult {
    std::vector<PlanPlace> places;  ///< by thing
    double cost = 0;
    int clashes = 0;            ///< 0: nothing lies where something else is
    std::vector<int> troubled;  ///< things that are in a clash
};

/// `steps` moves; at `deadline` it ends with the best so far.
PlanResult searchPlaces(const PlanGround& ground, const PlanTask& task, const std::vector<PlanPlace>& fixed, int steps,
                        unsigned seed, WorkClock::time_point deadline);

/// The shortest links that are missing between the strips of one net, for some of the things; `placed`, where it isn't null, says which count.
std::vector<PlanLink> linksOfThings(const PlanGround& ground, const PlanTask& task,
                                    const std::vector<PlanPlace>& places, const std::vector<int>& things,
                                    const std::vector<char>* placed, int net);
/// The shortest links that make one piece of metal of each net, as far as strips tell.
std::vector<PlanLink> linksOf(const PlanGround& ground, const PlanTask& task, const std::vector<PlanPlace>& places,
                              int net);

}  // namespace tiepoint
