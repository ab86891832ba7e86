#pragma once
// Whether a class can give a lesson with what it has: gaps are listed, other values are taken where the lesson's claims still hold, and the
// whole lesson is solved anew with them. Pure; safe from any thread.

#include "core/course/kit.h"
#include "core/course/lesson.h"
#include "core/course/lesson_check.h"

#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace tiepoint {

/// One thing that the lesson wants otherwise than the kit has it.
struct KitGap {
    std::string wanted;   ///< "330 Ω resistor"
    std::string instead;  ///< "390 Ω resistor"; empty: nothing serves
    int needed = 0, there = 0;
    std::string why;  ///< of a gap without a substitute: which claim fails, or that there is none
};

struct KitFit {
    std::vector<KitGap> gaps;
    std::optional<Lesson> fitted;  ///< the lesson with what was put in; nothing where its edits can't be applied so
    CheckedLesson checked;         ///< of the fitted lesson
    bool fits() const;
};

KitFit fitLesson(const Lesson& lesson, const Kit& kit);

/// A bench as a class can build it.
struct BenchFit {
    std::shared_ptr<const Bench>
        bench;  ///< on the kit's board, with its supply, and with other values where they serve
    std::vector<KitGap> gaps;
};
/// Why a bench won't do in place of the one that was asked for; empty: it will.
using BenchJudge = std::function<std::string(const Bench& other)>;
BenchFit fitBench(const std::shared_ptr<const Bench>& bench, const Kit& kit, const BenchJudge& judge);
/// "390 Ω resistor for 330 Ω resistor", "nothing serves for 2 mH coil: ...".
std::string gapInWords(const KitGap& gap);

/// A part as one asks for it: "330 Ω resistor", "red LED", "push button".
std::string askedFor(const Part& part);

/// The same lesson with all benches worked out again from its start and its edits. Fails, naming the step, where one can't be applied.
Result<Lesson> rebuilt(Lesson lesson);

}  // namespace tiepoint
