#pragma once
// What a bench does in every position of its switches and at the ends of its knobs: which lights shine and how brightly, what meters read,
// which limits are exceeded. Two benches are compared in the positions of one of them.

#include "core/bench/bench.h"
#include "core/snapshot/snapshot.h"

#include <map>
#include <memory>
#include <set>
#include <string>
#include <vector>

namespace tiepoint::examiner {

/// One position: how each switch stands, by its id, and all knobs.
struct Position {
    std::map<std::string, int> throws;
    double knobs = -1;  ///< all turned there; negative: as they stand
};

/// All positions of a bench; of one with many switches some, chosen by a fixed rule. The first has everything at rest.
std::vector<Position> positionsOf(const Bench& bench);

struct Moment {
    bool solved = true;
    std::map<std::string, double> lights;    ///< brightness by id
    std::set<std::string> lit;               ///< ids
    std::map<std::string, double> readings;  ///< of meters by id, SI; NaN: no number
    std::set<std::string> over;              ///< ids of parts over a limit, and of supplies at theirs
};

struct Behaviour {
    std::vector<Moment> moments;  ///< by position
    std::set<std::string>
        misprinted;  ///< rails whose print says the contrary: the minus of a supply in a rail printed plus, or plus in minus

    bool isSafe() const;
    double brightest(const std::string& light) const;
};

Behaviour behave(const Bench& bench, const std::vector<Position>& positions);

/// Whether lights shine as in `wanted` within a tenth, meters read the same, and nothing is over a limit that isn't there.
bool asWanted(const Moment& moment, const Moment& wanted);
bool asWanted(const Behaviour& behaviour, const Behaviour& wanted);

/// Whether a change of `before` to `after` spoils something that was as wanted: a light that shone and should, a reading, a limit.
bool spoils(const Behaviour& before, const Behaviour& after, const Behaviour& wanted);

/// Ids of switches of the bench that change nothing anywhere, those in `ignored` left out.
std::vector<std::string> idleSwitches(const Bench& bench, const std::set<std::string>& ignored);

}  // namespace tiepoint::examiner
