#pragma once
// The doctor for a real board: from the plan and what was seen and measured, which slips may have been made, what to look at next, and at
// the end the mend. Method after J. de Kleer and B. C. Williams, "Diagnosing multiple faults" (1987): candidates are the smallest sets of
// slips that agree with everything seen, first none, then one, then two; of pairs only the most probable are pursued (J. de Kleer, "Focusing
// on probable diagnoses", AAAI-91).
//
// Belongs to one thread; stoppable (core/base/stopping.h). A question takes some milliseconds on a lesson's board.

#include "core/doctor/question.h"

#include <deque>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace tiepoint {

/// A suspect whom an observation has ruled out.
struct RuledOut {
    const Suspect* suspect = nullptr;
    std::size_t by = 0;  ///< place of the observation
};

struct Diagnosis {
    std::vector<Weighed> fits;       ///< the likeliest first
    std::vector<RuledOut> ruledOut;  ///< single slips, the likeliest first
    std::optional<AskedQuestion> next;
    bool pairs = false;                ///< nothing single fits: those that do are two slips at once
    std::size_t pairsLeftOut = 0;      ///< pairs that were too improbable to be tried
    bool switchOff = false;            ///< something is hot: no more questions
    bool contradiction = false;        ///< nothing fits
    std::vector<std::size_t> doubted;  ///< then: observations without any one of which something would fit
};

/// What to do when something is hot, whatever else was seen.
std::string switchOffInWords();

class Doctor {
public:
    explicit Doctor(std::shared_ptr<const Layout> plan, const PossibleSlip& possible = {});

    /// What fits all that was seen, and what to ask next. Suspects stay valid until the doctor goes; pairs until the next call.
    Diagnosis diagnose(const std::vector<Observation>& seen, Instrument instrument = Instrument::Meter);

    const SuspectList& suspects() const { return suspects_; }
    const Bench& plan() const { return suspects_.plan(); }
    Foresight& foresight() { return foresight_; }
    Questioner& questioner() { return questioner_; }

    /// "W2 is one hole off": each slip in a sentence.
    std::string slipsInWords(const Suspect& suspect) const;
    /// What to do about it, a sentence for each slip.
    std::string mendInWords(const Suspect& suspect) const;
    /// The same as an edit of the board as it was built.
    Edit mendOf(const Suspect& suspect) const;
    std::vector<Hole> holesOf(const Suspect& suspect) const;

    /// What to do next, in words: the question with its answers, or how it ends.
    std::string nextInWords(const Diagnosis& diagnosis, const std::vector<Observation>& seen) const;

private:
    class Sorting;

    void tryPairs(const std::vector<Observation>& seen, Diagnosis& diagnosis);

    SuspectList suspects_;
    Foresight foresight_;
    Questioner questioner_;
    std::deque<Suspect> pairs_;
};

}  // namespace tiepoint
