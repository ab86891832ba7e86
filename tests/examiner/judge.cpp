#include "examiner/judge.h"

#include "examiner/slip_place.h"

#include <algorithm>
#include <chrono>

namespace tiepoint::examiner {
namespace {

Report reportOn(const Bench& bench, const Inspector& inspector) {
    return inspector(evaluate(std::make_shared<Bench>(bench)));
}

Report timedReport(const Bench& bench, const Inspector& inspector, double& seconds) {
    const auto snapshot = evaluate(std::make_shared<Bench>(bench));
    const auto begin = std::chrono::steady_clock::now();
    Report report = inspector(snapshot);
    seconds = std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count();
    return report;
}

std::optional<Bench> mended(const Bench& bench, const Finding& finding) {
    if (!finding.mend) return {};
    auto applied = apply(bench, finding.mend->edit);
    if (!applied) return {};
    return std::move(applied.value().bench);
}

/// Follows the first finding of each report, as often as there were slips, until all is as wanted.
bool firstMendsLeadHome(const Case& drawn, const Report& first, const Inspector& inspector) {
    Bench bench = drawn.bench();
    Report report = first;
    for (std::size_t step = 0; step < drawn.slips.size(); ++step) {
        if (step > 0) report = reportOn(bench, inspector);
        if (report.findings.empty()) return false;
        auto next = mended(bench, report.findings.front());
        if (!next) return false;
        bench = std::move(*next);
        if (asWanted(behave(bench, drawn.positions), drawn.wantedBehaviour)) return true;
    }
    return false;
}

template <class Item>
void compare(const std::vector<Item>& from, const std::vector<Item>& to, Edit& edit, const auto& add,
             const auto& replace) {
    for (const Item& item : from) {
        if (std::ranges::find(to, item.id, &Item::id) == to.end())
            edit.operations.insert(edit.operations.begin(), Remove{item.id});
    }
    for (const Item& item : to) {
        const auto old = std::ranges::find(from, item.id, &Item::id);
        if (old == from.end())
            edit.operations.push_back(add(item));
        else if (!(*old == item))
            edit.operations.push_back(replace(item));
    }
}

}  // namespace

Verdict judge(const Case& drawn, const Inspector& inspector) {
    Verdict verdict;
    verdict.report = timedReport(drawn.bench(), inspector, verdict.seconds);
    const auto& findings = verdict.report.findings;
    const auto layout = buildLayout(std::make_shared<Bench>(drawn.bench()));
    verdict.toldAll = true;
    for (const Slip& slip : drawn.slips) {
        const SlipPlace place(*layout, slip);
        const bool told = std::ranges::any_of(findings, [&](const Finding& finding) {
            return place.isToldBy(finding) || (finding.mend && place.isTouchedBy(finding.mend->edit));
        });
        verdict.told = verdict.told || told;
        verdict.toldAll = verdict.toldAll && told;
        if (findings.empty()) continue;
        const Finding& first = findings.front();
        verdict.causeFirst =
            verdict.causeFirst || place.isNamedBy(first) || (first.mend && place.isTouchedBy(first.mend->edit));
    }
    verdict.mendAsWanted = firstMendsLeadHome(drawn, verdict.report, inspector);
    for (const Finding& finding : findings) {
        const auto bench = mended(drawn.bench(), finding);
        if (bench && spoils(drawn.behaviour, behave(*bench, drawn.positions), drawn.wantedBehaviour))
            verdict.harm.push_back(finding.mend->text);
    }
    verdict.harmful = !verdict.harm.empty();
    return verdict;
}

SoundVerdict judgeSound(const Bench& bench, const Inspector& inspector) {
    SoundVerdict verdict;
    verdict.report = timedReport(bench, inspector, verdict.seconds);
    const auto positions = positionsOf(bench);
    const Behaviour wanted = behave(bench, positions);
    verdict.silent = true;
    for (const Finding& finding : verdict.report.findings) {
        if (finding.severity == Severity::Remark)
            ++verdict.remarks;
        else
            verdict.silent = false;
        const auto after = mended(bench, finding);
        if (after && !asWanted(behave(*after, positions), wanted)) verdict.harm.push_back(finding.mend->text);
    }
    return verdict;
}

Edit changesBetween(const Bench& from, const Bench& to) {
    Edit edit{"Put right", {}};
    compare(
        from.boards, to.boards, edit, [](const Board& it) { return AddBoard{it}; },
        [](const Board& it) { return ReplaceBoard{it}; });
    compare(
        from.parts, to.parts, edit, [](const Part& it) { return AddPart{it}; },
        [](const Part& it) { return ReplacePart{it}; });
    compare(
        from.jumpers, to.jumpers, edit, [](const Jumper& it) { return AddJumper{it}; },
        [](const Jumper& it) { return ReplaceJumper{it}; });
    return edit;
}

}  // namespace tiepoint::examiner
