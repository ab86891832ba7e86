// From suspicions to a report. Three principles hold the report together:
//   - A mend is offered only if the mended bench was solved and is better: the finding is gone, the lights it darkened shine, and
//     no fault or risk is new.
//   - Where something is broken that looks sound, rules would blame the wiring for it. What they say is kept only where they say the same
//     of the bench as it looks, or where it can hurt.
//   - What disappears with the mend of a graver finding was its consequence and isn't told beside it.
// Mended benches are judged without mends and without searches of their own, so that trials never nest.

#include "core/base/stopping.h"
#include "core/circuit/element.h"
#include "core/findings/dark_chain.h"
#include "core/findings/rules.h"
#include "core/findings/shorted.h"
#include "core/judge/judge.h"
#include "core/judge/worth.h"
#include "core/meter/meter.h"
#include "core/snapshot/settled_snapshot.h"

#include <algorithm>
#include <iterator>
#include <map>
#include <set>
#include <utility>

namespace tiepoint {
namespace {

struct Judged {
    const Rule* rule;
    Suspicion suspicion;
};
using Judgement = std::vector<Judged>;

/// What tells two findings of different benches to be the same.
using JudgedId = std::pair<std::string, std::string>;
JudgedId idOf(const Judged& judged) {
    const Finding& finding = judged.suspicion.finding;
    return {finding.rule, finding.parts.empty() ? std::string() : finding.parts.front()};
}

/// Leaves only lights that nothing found before explains; false if all of them are explained.
bool leaveUnexplained(Suspicion& suspicion, const std::set<std::string>& explained) {
    if (suspicion.darkens.empty()) return true;
    std::erase_if(suspicion.darkens, [&](const std::string& light) { return explained.contains(light); });
    return !suspicion.darkens.empty();
}

/// How a mended bench does.
struct Outcome {
    std::set<JudgedId> left;
    std::set<std::string> dark;
    bool solved = false;
};

class Inspector {
public:
    explicit Inspector(const Examination& examination) : examination_(examination) {}

    std::vector<Finding> report() {
        Judgement judged = suspect(examination_, true);
        leaveOutWhatBrokenThingsDo(judged);
        std::ranges::stable_sort(judged, [](const Judged& a, const Judged& b) {
            return a.suspicion.finding.severity > b.suspicion.finding.severity;
        });
        for (std::size_t i = 0; i < judged.size(); ++i) {
            const auto outcome = mend(judged[i]);
            if (outcome) dropConsequences(judged, i, *outcome);
        }
        // The judge knows benches at rest; what moves would be blamed for being still.
        if (!movesByItself(examination_.bench())) weighCauses(judged);
        std::vector<Finding> findings;
        for (Judged& each : judged) findings.push_back(std::move(each.suspicion.finding));
        if (isSound(examination_.bench())) tellDarkChain(findings);
        return findings;
    }

private:
    /// Where nothing grave is told and nothing of a dark light, what was looked at is told and where to look next.
    void tellDarkChain(std::vector<Finding>& findings) const {
        const auto isGrave = [](const Finding& each) { return each.severity != Severity::Remark; };
        if (std::ranges::any_of(findings, isGrave)) return;
        auto chain = darkChain(examination_, leftUntried_);
        const auto isTold = [&](const Finding& each) {
            return std::ranges::find(each.parts, chain->parts.front()) != each.parts.end();
        };
        if (chain && std::ranges::none_of(findings, isTold)) findings.insert(findings.begin(), std::move(*chain));
    }

    Judgement suspect(const Examination& examination, bool search) {
        Judgement judged;
        std::set<std::string> explained;
        const bool hopeless = examination.now().status() == Status::None || isShorted(examination.now());
        const bool searching = search && !examination.darkLights().empty();
        Judgement pool;  // of the rules that need proof
        const auto keep = [&](Judged each) {
            explained.insert(each.suspicion.darkens.begin(), each.suspicion.darkens.end());
            judged.push_back(std::move(each));
        };
        for (const Rule& rule : rules()) {
            stopIfAsked();
            if (rule.follows && hopeless) continue;
            if (rule.onlyProven && (!searching || explained.size() >= examination.darkLights().size())) continue;
            if (!rule.onlyProven) {
                for (Judged& each : proven(std::exchange(pool, {}))) keep(std::move(each));
            }
            for (Suspicion& each : rule.find(examination)) {
                each.finding.rule = rule.name;
                if (!leaveUnexplained(each, explained)) continue;
                if (rule.onlyProven)
                    pool.push_back({&rule, std::move(each)});
                else
                    keep({&rule, std::move(each)});
            }
        }
        return judged;
    }

    void leaveOutWhatBrokenThingsDo(Judgement& judged) {
        if (isSound(examination_.bench())) return;
        const auto snapshot =
            evaluate(std::make_shared<const Bench>(soundOf(examination_.bench())), *examination_.now().inputs);
        const Examination sound(*snapshot, examination_.drawer());
        std::map<const Rule*, Suspicions> ofSound;
        std::erase_if(judged, [&](const Judged& each) {
            if (each.rule->atOnce || each.rule->ofBroken) return false;
            const auto [known, isNew] = ofSound.try_emplace(each.rule);
            if (isNew) known->second = each.rule->find(sound);
            const Finding& told = each.suspicion.finding;
            return std::ranges::none_of(known->second, [&](const Suspicion& other) {
                const Finding& same = other.finding;
                return told.parts == same.parts && told.holes == same.holes && told.text == same.text;
            });
        });
    }

    /// For each light the suspicion whose mend leaves the fewest findings; of equals the one least in doubt, then the first.
    Judgement proven(Judgement pool) {
        std::ranges::stable_sort(pool, {}, [](const Judged& each) { return each.suspicion.doubt; });
        std::map<std::string, std::pair<std::size_t, Judged>> best;
        for (Judged& each : pool) {
            const std::string light = each.suspicion.darkens.front();
            const auto known = best.find(light);
            if (known != best.end() && known->second.first == 0) continue;
            const auto outcome = outcomeOf(each, each.suspicion.proposals.front());
            if (!outcome || (known != best.end() && known->second.first <= outcome->left.size())) continue;
            best.insert_or_assign(light, std::pair(outcome->left.size(), std::move(each)));
        }
        Judgement found;
        for (auto& [light, each] : best) found.push_back(std::move(each.second));
        return found;
    }

    /// Gives the finding the proposal that leaves the fewest findings; nothing if none holds.
    std::optional<Outcome> mend(Judged& judged) {
        std::optional<Outcome> best;
        for (Mend& proposal : judged.suspicion.proposals) {
            auto outcome = outcomeOf(judged, proposal);
            if (!outcome || (best && best->left.size() <= outcome->left.size())) continue;
            best = std::move(outcome);
            judged.suspicion.finding.mend = std::move(proposal);
            if (best->left.empty()) break;
        }
        return best;
    }

    /// What is left of a bench after a proposal; nothing if it doesn't mend.
    std::optional<Outcome> outcomeOf(const Judged& judged, const Mend& proposal) {
        const auto bench = examination_.after(proposal.edit);
        if (!bench) return std::nullopt;
        const auto snapshot = evaluate(bench, *examination_.now().inputs);
        const Examination mended(*snapshot);
        Outcome outcome;
        for (const int light : mended.darkLights()) outcome.dark.insert(mended.part(light).id);
        const auto& darkens = judged.suspicion.darkens;
        const auto isDark = [&](const std::string& light) { return outcome.dark.contains(light); };
        if (!darkens.empty() && (snapshot->status() != Status::Solved || std::ranges::any_of(darkens, isDark)))
            return std::nullopt;
        for (const Judged& left : suspect(mended, false)) {
            if (left.suspicion.finding.severity != Severity::Remark && !quick().contains(idOf(left)))
                return std::nullopt;
            outcome.left.insert(idOf(left));
        }
        if (outcome.left.contains(idOf(judged))) return std::nullopt;
        return outcome;
    }

    /// Puts the slip that explains most in front of what the rules say, or gives what they say the mend that is worth more.
    void weighCauses(Judgement& judged) {
        if (!isSound(examination_.bench())) return;  // the wiring would be blamed for what is broken
        // The judge tries every slip at rest: of what swings by itself it sees nothing but that it finds no rest.
        if (isRepeating(examination_.now()) || isUndecided(examination_.now())) return;
        Judge judge(examination_.now());
        dropSpoilingMends(judge, judged);
        const std::vector<FoundCause> causes = judge.causes();
        leftUntried_ = judge.leftUntried();
        std::optional<Outcome> outcome;
        const FoundCause* best = nullptr;
        for (const FoundCause& cause : causes) {
            if (best != nullptr || &cause - causes.data() >= kMostConfirmed) break;
            outcome = outcomeOfCause(cause);
            if (outcome) best = &cause;
        }
        if (best == nullptr) return;
        if (best->hidden) return tellBrokenFirst(judged, best->parts);
        if (!judged.empty() && isToldBetter(judge, judged.front(), *best, *outcome)) return;
        Finding finding = findingOf(*best, causes, judge.now());
        const auto goes = [&](const Judged& each) { return goesWith(each, *outcome); };
        // A law, a switch without effect and an open end keep their sentence and get the mend.
        const bool stays = !judged.empty() && staysFirst(judge, judged.front(), *best, *outcome);
        const bool explains = stays && goes(judged.front());
        // A remark that has nothing to do with what is graver says nothing.
        if (!judged.empty() && !goes(judged.front()) && finding.severity < judged.front().suspicion.finding.severity)
            return;
        if (explains) {
            Finding& law = judged.front().suspicion.finding;
            law.alternatives = std::move(finding.alternatives);
            law.alternatives.insert(law.alternatives.begin(),
                                    {std::move(finding.text), finding.parts, finding.holes, finding.mend});
            for (const std::string& id : finding.parts)
                if (std::ranges::find(law.parts, id) == law.parts.end()) law.parts.push_back(id);
            law.mend = std::move(finding.mend);
            law.severity = std::max(law.severity, finding.severity);
        }
        std::vector<std::string> consequences;
        Judgement left;
        for (std::size_t i = 0; i < judged.size(); ++i) {
            if (goes(judged[i]) && !(explains && i == 0))
                consequences.push_back(std::move(judged[i].suspicion.finding.text));
            else
                left.push_back(std::move(judged[i]));
        }
        judged = std::move(left);
        if (explains) {
            judged.front().suspicion.finding.consequences = std::move(consequences);
            return;
        }
        finding.consequences = std::move(consequences);
        Judged cause{nullptr, {}};
        cause.suspicion.finding = std::move(finding);
        judged.insert(stays ? judged.begin() + 1 : judged.begin(), std::move(cause));
    }

    /// Of something broken only what a meter shows is told.
    static void tellBrokenFirst(Judgement& judged, const std::vector<std::string>& broken) {
        std::stable_partition(judged.begin(), judged.end(), [&](const Judged& each) {
            const auto& parts = each.suspicion.finding.parts;
            return each.rule->ofBroken && !parts.empty() && std::ranges::find(broken, parts.front()) != broken.end();
        });
    }

    static constexpr std::ptrdiff_t kMostConfirmed = 3;
    static bool isLaw(const Judged& judged) {
        return judged.rule != nullptr && (judged.rule->atOnce || judged.rule->ofBroken) &&
               judged.suspicion.finding.severity != Severity::Remark;
    }
    /// Tells what shows and not why: what is to be done about it the judge knows better.
    static bool isSign(const Judged& judged) {
        constexpr std::string_view kSigns[] = {"no-effect", "lead-alone", "one-wire", "open-loop"};
        return judged.rule != nullptr && std::ranges::find(kSigns, judged.rule->name) != std::end(kSigns);
    }
    static bool goesWith(const Judged& judged, const Outcome& outcome) {
        const bool stillDark = std::ranges::any_of(
            judged.suspicion.darkens, [&](const std::string& light) { return outcome.dark.contains(light); });
        return !stillDark && !outcome.left.contains(idOf(judged));
    }

    /// No mend lowers a gain.
    void dropSpoilingMends(Judge& judge, Judgement& judged) const {
        for (Judged& each : judged) {
            auto& mend = each.suspicion.finding.mend;
            if (!mend || isAboutMeter(each.suspicion.finding)) continue;
            const auto trial = judge.trialOf(mend->edit);
            if (trial && trial->lowers) mend.reset();
        }
    }

    /// Whether what a rule says first is as good as the cause.
    bool isToldBetter(Judge& judge, const Judged& first, const FoundCause& cause, const Outcome& outcome) const {
        const Finding& finding = first.suspicion.finding;
        if (!goesWith(first, outcome)) return false;
        if (!finding.mend) return finding.severity == Severity::Remark && !isSign(first) && cause.worth < kAlarmWorth;
        return isAboutMeter(finding) || isMendBetter(judge, first, cause);
    }

    /// Whether what a rule says first stays there with its sentence.
    bool staysFirst(Judge& judge, const Judged& first, const FoundCause& cause, const Outcome& outcome) const {
        if (isLaw(first)) return true;
        if (goesWith(first, outcome)) return isSign(first);
        const Finding& finding = first.suspicion.finding;
        return finding.severity != Severity::Remark && finding.mend && isMendBetter(judge, first, cause);
    }

    /// Whether the mend that a rule proposes is worth nearly as much as that of the cause.
    static bool isMendBetter(Judge& judge, const Judged& first, const FoundCause& cause) {
        const Finding& finding = first.suspicion.finding;
        const auto trial = judge.trialOf(finding.mend->edit);
        if (!trial || trial->lowers) return false;
        constexpr double kWeightOfRules = 6, kUsualWays = 10;
        constexpr double kMuchMore = 8, kMoreThanLaw = 2;  // what a law says of a mend is of the law, not of the hand
        const double most = isSign(first) ? 0 : isLaw(first) ? kMoreThanLaw : kMuchMore;
        return trial->worth + worthOfSlip(kWeightOfRules, kUsualWays) >= cause.worth - most;
    }

    /// A meter that can't read while something else works is mended by switching that off.
    bool isAboutMeter(const Finding& finding) const {
        const Part* part = finding.parts.empty() ? nullptr : examination_.bench().findPart(finding.parts.front());
        return part != nullptr && isMeter(*part->kind);
    }

    Finding findingOf(const FoundCause& cause, const std::vector<FoundCause>& causes, const Observed& now) const {
        Finding finding;
        finding.rule = cause.kind;
        const bool lights = cause.then.traits[Trait::LitLights] > now.traits[Trait::LitLights];
        const bool law = cause.then.traits[Trait::Over] < now.traits[Trait::Over] ||
                         cause.then.traits[Trait::Unsolved] < now.traits[Trait::Unsolved];
        // Where lights only shine otherwise, or nothing works that didn't, it may be what somebody wanted.
        const bool mayBeMeant = onlyDims(now.traits, cause.then.traits) || !bringsWork(now.traits, cause.then.traits);
        finding.severity = cause.worth < kAlarmWorth || mayBeMeant ? Severity::Remark
                           : lights || law                         ? Severity::Fault
                                                                   : Severity::Risk;
        finding.parts = cause.parts;
        finding.holes = cause.holes;
        finding.text = cause.text;
        finding.mend = cause.mend;
        for (const FoundCause* other : Judge::likeIt(cause, causes))
            finding.alternatives.push_back({other->text, other->parts, other->holes, other->mend});
        return finding;
    }

    /// The bench without the slip, judged by the rules: nothing where hands can't do it, or where something is new that is no remark.
    std::optional<Outcome> outcomeOfCause(const FoundCause& cause) {
        const auto bench = examination_.after(cause.mend.edit);
        if (!bench) return std::nullopt;
        const auto snapshot = evaluate(bench, *examination_.now().inputs);
        const Examination mended(*snapshot);
        Outcome outcome;
        for (const int light : mended.darkLights()) outcome.dark.insert(mended.part(light).id);
        for (const Judged& left : suspect(mended, false)) {
            if (left.suspicion.finding.severity != Severity::Remark && !quick().contains(idOf(left)))
                return std::nullopt;
            outcome.left.insert(idOf(left));
        }
        return outcome;
    }

    /// Findings of the bench as it is, judged as mended ones are.
    const std::set<JudgedId>& quick() {
        if (!quick_) {
            quick_.emplace();
            for (const Judged& each : suspect(examination_, false)) quick_->insert(idOf(each));
        }
        return *quick_;
    }

    static void dropConsequences(Judgement& judged, std::size_t cause, const Outcome& outcome) {
        const auto follows = [&](const Judged& each) {
            const bool stillDark = std::ranges::any_of(
                each.suspicion.darkens, [&](const std::string& light) { return outcome.dark.contains(light); });
            return !stillDark && !outcome.left.contains(idOf(each));
        };
        judged.erase(std::remove_if(judged.begin() + static_cast<std::ptrdiff_t>(cause) + 1, judged.end(), follows),
                     judged.end());
    }

    const Examination& examination_;
    std::optional<std::set<JudgedId>> quick_;
    bool leftUntried_ = false;
};

}  // namespace

Report inspect(const Snapshot& snapshot, const ResistorDrawer& drawer) {
    const Examination examination(snapshot, drawer);
    return {snapshot.revision, Inspector(examination).report()};
}

}  // namespace tiepoint
