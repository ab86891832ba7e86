#include "support/slip_figures.h"

#include "core/bench/bench_file.h"
#include "support/compact_bench.h"
#include "support/held_out_benches.h"
#include "support/sound_benches.h"

#include <fmt/format.h>

#include <algorithm>
#include <random>

namespace tiepoint::test {
namespace {

constexpr const char* kSoundDemos[] = {"beacon-lamp",        "lock-gate",   "quay-bell-lamp", "fairway-dimmer",
                                       "two-way-stair-lamp", "three-buoys", "gangway"};

struct Case {
    const std::string* name;
    const Bench* bench;
    const SeenDoing* behaviour;
    Slip slip;
};

std::string told(const std::vector<Finding>& findings) {
    std::string text;
    for (const Finding& finding : findings) text += fmt::format(" [{}] {}", finding.rule, finding.text);
    return text;
}

NamedBenches named(std::span<const SoundBench> sound) {
    NamedBenches all;
    for (const SoundBench& each : sound) all.emplace_back(each.name, compactBench(each.text));
    return all;
}

SlipFigures judgeCase(const Case& each, const std::function<void(const std::string&)>& tell) {
    SlipFigures figures{.slips = 1};
    const auto broken = std::make_shared<const Bench>(apply(*each.bench, each.slip.edit)->bench);
    const auto harm = SeenDoing(broken).harmAgainst(*each.behaviour);
    const auto findings = inspect(*evaluate(broken)).findings;
    const bool alarm =
        std::ranges::any_of(findings, [](const Finding& finding) { return finding.severity != Severity::Remark; });
    const auto report = [&](std::string_view what) {
        std::string harms;
        for (const std::string& one : harm) harms += (harms.empty() ? "" : ", ") + one;
        if (tell)
            tell(fmt::format("{}: {}: {} {} ({}):{}", what, *each.name, each.slip.kind, each.slip.what, harms,
                             told(findings)));
    };
    if (harm.empty()) {
        figures.alarms = alarm;
        if (alarm) report("alarm");
        return figures;
    }
    const bool onlyDead = std::ranges::all_of(harm, [](const std::string& one) { return one.ends_with("dead"); });
    figures.broken = 1;
    figures.found = alarm || (onlyDead && !findings.empty());
    if (!figures.found)
        report("missed");
    else if (tellsCause(findings.front(), each.slip, *broken, *each.behaviour))
        figures.causeFirst = 1;
    else
        report("cause");
    return figures;
}

}  // namespace

SlipFigures& SlipFigures::operator+=(const SlipFigures& more) {
    slips += more.slips;
    broken += more.broken;
    found += more.found;
    alarms += more.alarms;
    causeFirst += more.causeFirst;
    return *this;
}

NamedBenches everySoundBench() {
    NamedBenches all = named(soundBenches());
    for (const char* name : kSoundDemos) {
        auto read = readBenchFile(fmt::format(TIEPOINT_SOURCE_DIR "/resources/benches/{}.bench.json", name));
        all.emplace_back(name, std::move(read).value().bench);
    }
    return all;
}

NamedBenches everyHeldOutBench() { return named(heldOutBenches()); }

std::map<std::string_view, SlipFigures> judgeSlips(const NamedBenches& benches, int count, std::uint32_t seed,
                                                   const std::function<void(const std::string&)>& tell) {
    std::vector<SeenDoing> behaviours;
    for (const auto& [name, bench] : benches) behaviours.emplace_back(std::make_shared<const Bench>(bench));
    std::map<std::string_view, std::vector<Case>> byKind;
    for (std::size_t b = 0; b < benches.size(); ++b) {
        for (Slip& slip : slipsOf(benches[b].second)) {
            byKind[slip.kind].push_back({&benches[b].first, &benches[b].second, &behaviours[b], std::move(slip)});
        }
    }
    std::map<std::string_view, SlipFigures> figures;
    std::mt19937 random(seed);
    for (const std::string_view kind : kSlipKinds) {
        auto& cases = byKind[kind];
        std::ranges::shuffle(cases, random);
        const auto taken = std::min(cases.size(), static_cast<std::size_t>(count));
        for (std::size_t i = 0; i < taken; ++i) figures[kind] += judgeCase(cases[i], tell);
    }
    return figures;
}

}  // namespace tiepoint::test
