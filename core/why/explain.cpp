#include "core/why/explain.h"

#include "core/findings/when_words.h"
#include "core/meter/meter.h"
#include "core/snapshot/lit.h"
#include "core/snapshot/readings.h"
#include "core/snapshot/settled_snapshot.h"
#include "core/why/explainer.h"
#include "core/words/words.h"

#include <fmt/format.h>

#include <algorithm>

namespace tiepoint {

Answer Explainer::run() {
    answer_.figures = {{"current", currentThrough(snapshot_, index_).inAmpere}};
    const bool carries =
        currentThrough(snapshot_, index_).inAmpere >= kVisibleAmpere;  // a filament glows later than that
    if (isMeter(*self().kind))
        explainReading();
    else if (!works(snapshot_, index_) && !(self().kind->emitsLight && carries))
        explainIdle();
    else if (self().kind->isSupply)
        explainSupply();
    else if (self().kind->emitsLight)
        explainLight();
    else
        explainHeat();
    return std::move(answer_);
}

/// A light works while it is lit, anything else while a current runs through it.
bool Explainer::works(const Snapshot& snapshot, int part) const {
    if (snapshot.status() != Status::Solved) return false;
    if (snapshot.layout->bench->parts[part].kind->emitsLight) return isLit(snapshot, part);
    return currentThrough(snapshot, part).inAmpere > kNoCurrentAmpere;
}

void Explainer::add(std::string text, std::vector<std::string> parts, std::vector<Hole> holes) {
    answer_.chain.push_back({std::move(text), std::move(parts), std::move(holes)});
}

std::string Explainer::currentWords(const Snapshot& snapshot, int part) {
    return snapshot.shown().through(part).in.text();
}

std::string Explainer::percentInWords(double share) { return fmt::format("{:.0f}", 100 * share); }

std::string Explainer::wayInWords(const CurrentPath& path) const {
    std::vector<std::string> ids;
    for (const PathLink& link : path.links) ids.push_back(bench().parts[link.part].id);
    return sayList(ids, "list.then");
}

std::string Explainer::outcomeInWords(const Snapshot& then) const {
    const int part = then.layout->bench->partIndex(self().id);
    const auto tightest = tightestRating(then, part);
    const bool tooMuch = tightest && tightest->rating->maximum && tightest->share() > 1;
    const std::string current = currentWords(then, part);
    if (!self().kind->emitsLight || !(then.brightness(part) > 0))
        return say(tooMuch ? "why.outcome.tooMuch" : "why.outcome", {{"current", current}, {"part", self().id}});
    return say(tooMuch ? "why.outcome.litTooMuch" : "why.outcome.lit",
               {{"current", current}, {"part", self().id}, {"percent", percentInWords(then.brightness(part))}});
}

Answer explain(const Snapshot& snapshot, int part, const ResistorDrawer& drawer) {
    const auto lasting = settledOf({std::shared_ptr<const Snapshot>(), &snapshot});
    Answer answer = Explainer(*lasting, part, drawer).run();
    if (const std::string words = lastingWords(*lasting); !words.empty())
        answer.chain.insert(answer.chain.begin(), {words, {}, {}});
    return answer;
}

}  // namespace tiepoint
