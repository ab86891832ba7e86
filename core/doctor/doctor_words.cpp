#include "core/base/capital.h"
#include "core/doctor/doctor.h"
#include "core/doctor/observation_words.h"
#include "core/doctor/question_words.h"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>

namespace tiepoint {
namespace {

template <class List>
void append(List& to, const List& more) {
    to.insert(to.end(), more.begin(), more.end());
}

BenchChange joinedChange(BenchChange one, const BenchChange& other) {
    append(one.leads, other.leads), append(one.ends, other.ends), append(one.figures, other.figures);
    append(one.rails, other.rails), append(one.conditions, other.conditions);
    append(one.added, other.added), append(one.removed, other.removed);
    return one;
}

}  // namespace

std::string Doctor::slipsInWords(const Suspect& suspect) const {
    if (suspect.slips.empty()) return "Everything is as planned.";
    std::string words;
    for (const int slip : suspect.slips)
        words += (words.empty() ? "" : " ") + slipInWords(plan(), suspects_.slips()[static_cast<std::size_t>(slip)]);
    return words;
}

std::string Doctor::mendInWords(const Suspect& suspect) const {
    if (suspect.slips.empty()) return "Nothing to mend.";
    std::string words;
    for (const int slip : suspect.slips)
        words += (words.empty() ? "" : " ") +
                 tiepoint::mendInWords(plan(), suspects_.slips()[static_cast<std::size_t>(slip)]);
    return words;
}

Edit Doctor::mendOf(const Suspect& suspect) const {
    BenchChange right;
    for (const int slip : suspect.slips)
        right = joinedChange(std::move(right), suspects_.slips()[static_cast<std::size_t>(slip)].right);
    std::string name = mendInWords(suspect);
    name.pop_back();
    return editOf(suspects_.built(suspect), right, std::move(name));
}

std::vector<Hole> Doctor::holesOf(const Suspect& suspect) const {
    std::vector<Hole> holes;
    for (const int slip : suspect.slips) append(holes, suspects_.slips()[static_cast<std::size_t>(slip)].holes());
    return holes;
}

std::string switchOffInWords() {
    return "Switch the supply off now and touch nothing hot. Ask no more of it until it is cold; then compare with "
           "the plan, hole by hole. The person who supervises decides when it is switched on again.";
}

std::string Doctor::nextInWords(const Diagnosis& diagnosis, const std::vector<Observation>& seen) const {
    if (diagnosis.switchOff) {
        return switchOffInWords();
    }
    if (diagnosis.contradiction) {
        std::string words = "No slip, and no two slips, agree with everything that was seen.";
        for (std::size_t i = 0; i < diagnosis.doubted.size(); ++i)
            words += fmt::format("{}{}", i == 0 ? " Look once more whether this is so: " : "; or ",
                                 observationInWords(plan(), seen[diagnosis.doubted[i]]));
        return words + (diagnosis.doubted.empty() ? " Compare with the plan, hole by hole." : ".");
    }
    if (diagnosis.next) return questionWithAnswers(plan(), *diagnosis.next, diagnosis.fits);
    const Suspect& likeliest = *diagnosis.fits.front().suspect;
    if (likeliest.slips.empty()) return "Everything that was seen is as planned.";
    return (diagnosis.fits.size() == 1 ? "" : "Nothing more can be told from outside. ") + mendInWords(likeliest);
}

}  // namespace tiepoint
