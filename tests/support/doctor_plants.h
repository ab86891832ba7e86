#pragma once
// Plants: a plan, a slip made on it by chance, parts off within their tolerance, and somebody who looks and measures as the doctor asks, with
// a meter that errs within its bounds. What is seen comes from the built bench solved from scratch (core/behaviour), not from variants.

#include "core/behaviour/meter_probe.h"
#include "core/behaviour/position_solver.h"
#include "core/doctor/doctor.h"
#include "examiner/chance.h"

#include <memory>
#include <string>
#include <vector>

namespace tiepoint::test {

/// A real board on a table.
class RealBoard {
public:
    /// As built from the suspect's slips, its resistors off by chance.
    RealBoard(const Doctor& doctor, const Suspect& truth, examiner::Chance& chance);

    /// What somebody sees or reads who does what is asked; nothing where there is no answer, such as volts without a solution.
    std::vector<Observation> answer(const Question& question);
    Shine shine(const Digits& digits, int part);
    bool solves(const Digits& digits);
    double volts(const Digits& digits, const Hole& red);
    const Bench& bench() const { return *bench_; }

private:
    int netAt(const Hole& hole) const;
    int blackNet() const;
    std::vector<Observation> look(const Question& question) const;
    bool beeps(const Question& question) const;

    const Bench& plan_;
    const Suspect& truth_;
    examiner::Chance& chance_;
    bool hidden_;
    std::shared_ptr<const Bench> bench_;
    std::shared_ptr<const Layout> layout_;
    std::vector<Throw> throws_;
    std::unique_ptr<PositionSolver> solver_;
    std::unique_ptr<MeterProbe> probe_;
};

struct PlantOutcome {
    bool noticed = false;  ///< some light looks other than planned somewhere
    int questions = 0;
    bool survived = true;   ///< the truth was never ruled out
    bool finished = false;  ///< nothing was left to ask within the most
    std::size_t tied = 0;   ///< how many fit at the end
    std::size_t apart =
        0;  ///< of these: that a look or a meter at some hole would tell from the truth, by more than allowances
    double slowest = 0, seconds = 0;  ///< of one question; of all
    std::string story;
};

struct PlantRules {
    bool eye = true;  ///< whether somebody may look how a thing stands; else only lights and the meter
    int mostQuestions = 8;
    bool checkTies = true;
};

/// One plant: the truth drawn from the doctor's list by weight.
PlantOutcome runPlant(Doctor& doctor, const Suspect& truth, examiner::Chance& chance, const PlantRules& rules = {});
/// A suspect by chance, the commoner the likelier; one that can be solved.
const Suspect& drawTruth(const Doctor& doctor, examiner::Chance& chance);

}  // namespace tiepoint::test
