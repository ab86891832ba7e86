// No current runs through the part. First the switches are tried, fewest throws first; if none helps, the mends of what is found. Where
// pressing is enough the bench is sound, and the open contact is the missing link.

#include "core/base/capital.h"
#include "core/behaviour/supply_nets.h"
#include "core/findings/trial.h"
#include "core/snapshot/readings.h"
#include "core/snapshot/settled_snapshot.h"
#include "core/why/explainer.h"
#include "core/words/words.h"

#include <algorithm>

namespace tiepoint {
namespace {

std::string withoutStop(std::string text) {
    if (text.ends_with('.')) text.pop_back();
    return text;
}

/// "S1 is open: no complete path." of a throw that stands so and would have to stand otherwise.
std::string missingInWords(const Throw& each, const Bench& bench, int now, int then) {
    const std::string& id = bench.parts[each.part].id;
    const bool closes = then > now;
    if (!each.isCap() && bench.parts[each.part].kind->state[each.state].type == ValueType::Choice) {
        return say(
            "why.missing.stands",
            {{"switch", id}, {"now", positionInWords(each, bench, now)}, {"then", positionInWords(each, bench, then)}});
    }
    return say(closes ? "why.missing.open" : "why.missing.closed", {{"switch", id}});
}

/// "let go of S1", "slide S2 towards b", "close S3".
std::string throwInWords(const Throw& each, const Bench& bench, int then) {
    const std::string& id = bench.parts[each.part].id;
    if (each.isCap()) return say(then != 0 ? "why.throw.press" : "why.throw.letGo", {{"switch", id}});
    const bool choice = bench.parts[each.part].kind->state[each.state].type == ValueType::Choice;
    if (!choice) return say(then != 0 ? "why.throw.close" : "why.throw.open", {{"switch", id}});
    return say("why.throw.slide", {{"switch", id}, {"position", positionInWords(each, bench, then)}});
}

/// "press S1 and S2 and slide S3 towards b": what has to be thrown to get from one position to another.
std::string throwsInWords(const std::vector<Throw>& throws, const Bench& bench, const Digits& now, const Digits& then) {
    std::vector<std::string> pressed, words;
    for (std::size_t t = 0; t < throws.size(); ++t) {
        if (now[t] == then[t]) continue;
        if (throws[t].isCap() && then[t] != 0)
            pressed.push_back(bench.parts[throws[t].part].id);
        else
            words.push_back(throwInWords(throws[t], bench, then[t]));
    }
    if (!pressed.empty())
        words.insert(words.begin(), say("why.throw.press", {{"switch", sayList(pressed, "list.and")}}));
    return sayList(words, "list.and");
}

/// Where the current meets each part on its way; parts that it doesn't meet come last.
std::size_t placeOnWay(const CurrentPath& path, int part) {
    const auto found = std::ranges::find(path.links, part, &PathLink::part);
    return static_cast<std::size_t>(found - path.links.begin());
}

}  // namespace

void Explainer::explainIdle() {
    const bool light = self().kind->emitsLight;
    answer_.question = say(light                   ? "why.question.dark"
                           : self().kind->isSupply ? "why.question.givesNone"
                                                   : "why.question.noneFlows",
                           {{"part", self().id}});
    if (snapshot_.status() == Status::None) {
        add(snapshot_.solution.reason);
    } else if (supplyNets(*snapshot_.layout).empty()) {
        add(say("why.idle.noSupply"));
    } else {
        if (currentThrough(snapshot_, index_).inAmpere > kNoCurrentAmpere) {
            add(say("why.idle.tooLittle", {{"current", currentWords(snapshot_, index_)}, {"part", self().id}}),
                {self().id});
        } else if (light) {
            add(say("why.idle.dark", {{"part", self().id}}), {self().id});
        }
        if (self().kind->isSupply) add(say("why.idle.supply", {{"part", self().id}}), {self().id});
        sayWhatIsReached();
    }

    const Wish wish = [this](const Snapshot& then) { return works(then, then.layout->bench->partIndex(self().id)); };
    PositionSolver solver(snapshot_.layout);
    const Digits now = digitsOf(solver.throws(), bench(), *snapshot_.inputs);
    const Nearest nearest = nearestPositions(solver, now, wish);
    if (!nearest.found.empty()) {
        sayMissing(solver.throws(), now, nearest.found.front());
        for (const Reached& reached : nearest.found) offer(solver.throws(), now, reached);
        return;
    }
    const auto mended = mendUntil(snapshot_, wish, drawer_);
    if (!mended) return sayWhatWasTried(solver.throws().size(), nearest);
    std::vector<std::string> mends;
    for (const Finding& step : mended->steps) {
        add(step.text, step.parts, step.holes);
        answer_.chain.back().missingLink = mends.empty();
        mends.push_back(uncapitalised(step.mend->text));  // inside a sentence; all of them begin with a verb
    }
    const auto throws = throwsOf(*mended->bench);
    const Digits before = digitsOf(throws, *mended->bench, *snapshot_.inputs);
    if (before != mended->reached.digits) sayMissing(throws, before, mended->reached);
    offer(throws, before, mended->reached, sayList(mends, "list.then"), mended->edit);
}

/// Nothing helped, of what was tried: where there is more than that, it is said.
void Explainer::sayWhatWasTried(std::size_t switches, const Nearest& nearest) {
    if (isUndecided(snapshot_)) return;
    if (nearest.complete) {
        add(say(switches == 0 ? "why.idle.noMend" : "why.idle.noPosition", {{"part", self().id}}));
        return;
    }
    add(say("why.idle.tooMany", {{"switches", switches}, {"tried", nearest.throwsTried}, {"part", self().id}}));
}

/// Which legs have a way to plus and to minus as the switches stand; for parts with two legs.
void Explainer::sayWhatIsReached() {
    if (snapshot_.status() != Status::Solved || self().kind->leads.size() != 2 || self().kind->isSupply) return;
    const Layout& layout = *snapshot_.layout;
    const auto reach = reachWithout(snapshot_, index_);
    const int nets[] = {layout.netOfLead[layout.leadIndex(index_, 0)], layout.netOfLead[layout.leadIndex(index_, 1)]};
    if (nets[0] == nets[1]) return;  // a finding says it better
    const SupplyReach one = reach[nets[0]], other = reach[nets[1]];
    const std::string names[] = {leadInWords(self(), 0), leadInWords(self(), 1)};
    const auto isMissing = [&](std::string_view sentence, int there) {
        add(capitalised(say(sentence, {{"there", names[there]}, {"missing", names[1 - there]}})), {self().id});
    };
    if (!one.plus && !one.minus && !other.plus && !other.minus) {
        add(say("why.idle.neither", {{"part", self().id}}), {self().id});
    } else if ((one.plus || other.plus) && !one.minus && !other.minus) {
        isMissing("why.idle.noMinus", one.plus ? 0 : 1);
    } else if ((one.minus || other.minus) && !one.plus && !other.plus) {
        isMissing("why.idle.noPlus", one.minus ? 0 : 1);
    }
}

void Explainer::sayMissing(const std::vector<Throw>& throws, const Digits& now, const Reached& reached) {
    const Bench& there = *reached.snapshot->layout->bench;
    const CurrentPath path = pathThrough(*reached.snapshot, there.partIndex(self().id));
    std::vector<std::size_t> changed;
    for (std::size_t t = 0; t < throws.size(); ++t) {
        if (now[t] != reached.digits[t]) changed.push_back(t);
    }
    std::ranges::stable_sort(changed, {}, [&](std::size_t t) { return placeOnWay(path, throws[t].part); });
    bool first = std::ranges::none_of(answer_.chain, &Cause::missingLink);
    for (const std::size_t t : changed) {
        const Part& part = there.parts[throws[t].part];
        add(missingInWords(throws[t], there, now[t], reached.digits[t]), {part.id}, holesOf(part));
        answer_.chain.back().missingLink = std::exchange(first, false);
    }
}

void Explainer::offer(const std::vector<Throw>& throws, const Digits& now, const Reached& reached,
                      const std::string& mend, Edit edit) {
    const Bench& there = *reached.snapshot->layout->bench;
    for (std::size_t t = 0; t < throws.size(); ++t) {
        if (now[t] == reached.digits[t] || throws[t].isCap()) continue;
        edit.operations.emplace_back(ReplacePart{there.parts[throws[t].part]});
        if (edit.name.empty()) edit.name = say("history.set", {{"thing", there.parts[throws[t].part].id}});
    }
    const std::string thrown = throwsInWords(throws, there, now, reached.digits);
    Remedy remedy;
    std::vector<std::string> steps{mend, thrown};
    std::erase(steps, "");
    remedy.text = capitalised(withoutStop(sayList(steps, "list.then")));
    remedy.outcome = outcomeInWords(*reached.snapshot);
    remedy.edit = std::move(edit);
    remedy.held = reached.snapshot->inputs->held;
    answer_.remedies.push_back(std::move(remedy));
}

}  // namespace tiepoint
