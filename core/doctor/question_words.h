#pragma once
// Questions and their answers in plain words. Pure.

#include "core/doctor/question.h"

#include <string>
#include <vector>

namespace tiepoint {

/// One answer in two or three words: "5.00 V", "dark", "as planned", "anode in g18, cathode in g19", "it beeps".
std::string answerInWords(const Bench& plan, const Question& question, const std::vector<Observation>& seen);
/// What to do, a sentence: "With S1 pressed, measure at f22." "Look at D1."
std::string questionInWords(const Bench& plan, const Question& question);
/// What to look at after an answer: "look at D1 and W3", "D1 and W3" being what it leaves, at most three by name.
std::string leavesInWords(const Reply& answer, const std::vector<Weighed>& live);
/// The question with what its likeliest answers would mean, at most so many: "Measure at f22. 5 V: look at D1. 0 V: look at S1 and W2."
std::string questionWithAnswers(const Bench& plan, const AskedQuestion& asked, const std::vector<Weighed>& live);
/// Where the tips of a thing are in the plan: "legs in c8 and c14"; "" where it has none.
std::string plannedPlace(const Bench& plan, const std::string& id);

}  // namespace tiepoint
