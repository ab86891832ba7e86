#pragma once
// Slips: sound benches broken at random as hands break them, and whether a slip did any harm.
//
// Harm is judged by solving the bench in every position of its switches and comparing with the sound one; it knows no rule. A slip
// that moves a lead inside its strip, or makes another circuit in which every lamp can light, nothing burns and every switch
// does something, did none: nobody could tell it from what was meant.

#include "core/behaviour/position_solver.h"
#include "core/edit/edit.h"
#include "core/findings/finding.h"

#include <map>
#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace tiepoint::test {

struct Slip {
    std::string_view kind;    ///< one of slipKinds()
    std::string what;         ///< "cathode of D1 into A.f15"
    std::string id;           ///< of the part, jumper or board that was broken
    std::vector<Hole> holes;  ///< where it was and where it is
    Edit edit;
};

inline constexpr std::string_view kOneHoleOff = "lead one hole off", kReversed = "reversed",
                                  kTimesTen = "value times ten", kTurned = "switch turned", kHalves = "rail halves",
                                  kMissing = "missing jumper";
inline constexpr std::string_view kSlipKinds[] = {kOneHoleOff, kReversed, kTimesTen, kTurned, kHalves, kMissing};

/// Every single slip that a bench allows: those that apply() accepts.
std::vector<Slip> slipsOf(const Bench& sound);

/// What a bench does, position by position, by the solve alone.
class SeenDoing {
public:
    explicit SeenDoing(std::shared_ptr<const Bench> bench);

    /// What is worse than on the sound bench: "D1 dark", "short", "R1 burns", "S1 dead", "no solution"; sorted, empty if nothing.
    std::vector<std::string> harmAgainst(const SeenDoing& sound) const;
    /// Whether every part carries the same current in every position, within a hundredth.
    bool sameAs(const SeenDoing& other) const;

private:
    void addBurnt(const Snapshot& snapshot);
    void burnAtEnds(const Bench& bench, const Part& part);

    std::set<std::string> lit_, burnt_, dead_;
    bool shorted_ = false, unsolved_ = false;
    std::map<Digits, std::map<std::string, double>> amperes_;  ///< by position, by part
};

/// Whether a finding tells the cause of a harm: it names what was broken, or a place where the slip was made, or its mend brings back
/// what the sound bench did.
bool tellsCause(const Finding& finding, const Slip& slip, const Bench& broken, const SeenDoing& sound);

}  // namespace tiepoint::test
