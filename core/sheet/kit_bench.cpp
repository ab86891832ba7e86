#include "core/sheet/kit_bench.h"

#include "core/compare/comparison.h"
#include "core/findings/finding.h"

#include <algorithm>
#include <set>

namespace tiepoint {
namespace {

/// A quarter of the lightness scale: clearly another light, but the same thing seen (common practice of taking the next value).
constexpr double kStillAlike = 0.25;

std::set<std::string> rulesBroken(const Bench& bench) {
    std::set<std::string> broken;
    for (const Finding& each : inspect(*evaluate(std::make_shared<const Bench>(bench))).findings)
        broken.insert(each.rule);
    return broken;
}

}  // namespace

BenchFit benchForKit(const std::shared_ptr<const Bench>& bench, const Kit& kit) {
    auto wanted = std::make_shared<Bench>(*bench);
    wanted->pinned.clear();  // other values read otherwise
    const ComparisonTarget target(wanted);
    const std::set<std::string> before = rulesBroken(*bench);
    ComparisonBounds bounds;
    bounds.brightness = kStillAlike;
    return fitBench(bench, kit, [&](const Bench& other) -> std::string {
        const auto compared = compareBenches(std::make_shared<const Bench>(other), target, bounds);
        if (!compared) return compared.error().message;
        if (!compared->sameBehaviour)
            return compared->behaviour.empty() ? "it doesn't do the same" : compared->behaviour.front().text;
        const std::set<std::string> after = rulesBroken(other);
        const auto fresh = std::ranges::find_if(after, [&](const std::string& rule) { return !before.contains(rule); });
        return fresh == after.end() ? std::string() : "it brings a fault: " + *fresh;
    });
}

}  // namespace tiepoint
