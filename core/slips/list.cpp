// The list: candidates of the kinds, the likeliest first, of which those are kept that can be built and whose circuit no likelier one gives.
// Building is the dear question, so it is asked only down to the number wanted.

#include "core/base/stopping.h"
#include "core/slips/search.h"
#include "core/slips/slip.h"

#include <algorithm>
#include <iterator>
#include <limits>
#include <unordered_set>

namespace tiepoint {
namespace {

/// A symptom has to do with what is near: of so many things around it each has some ten slips.
constexpr std::size_t kThingsForEachSlip = 2;
constexpr std::size_t kFewestThings = 24;
constexpr std::size_t kThingsForOneCircuit = 40;  ///< a slip that explains differences has to do with them
constexpr std::size_t kAll = std::numeric_limits<std::size_t>::max();

std::vector<SlipCandidate> candidatesOf(const SlipKind& kind, const Ground& ground, const Scope& scope, bool backwards,
                                        std::optional<std::uint64_t> wanted = {}) {
    SlipSearch search(kind, ground, scope, backwards, wanted);
    kind.find(search);
    return search.take();
}

/// The candidate as a slip, carried out in the first way that hands can build; false if there is none.
bool settle(SlipCandidate& candidate, const Ground& ground) {
    for (BenchChange& way : candidate.ways) {
        stopIfAsked();
        if (!ground.canBuild(way)) continue;
        BenchChange back = inverseOf(ground.bench(), way);
        candidate.slip.wrong = candidate.slip.made ? std::move(back) : std::move(way);
        candidate.slip.right = candidate.slip.made ? std::move(way) : std::move(back);
        return true;
    }
    return false;
}

std::vector<Slip> settledList(std::vector<SlipCandidate> candidates, const Ground& ground, std::size_t most) {
    std::vector<Slip> slips;
    std::unordered_set<std::uint64_t> circuits;
    for (SlipCandidate& candidate : candidates) {
        if (slips.size() == most) break;
        if (circuits.contains(candidate.slip.circuit) || !settle(candidate, ground)) continue;
        circuits.insert(candidate.slip.circuit);
        slips.push_back(std::move(candidate.slip));
    }
    return slips;
}

void likeliestFirst(std::vector<SlipCandidate>& candidates) {
    std::ranges::stable_sort(candidates, [](const SlipCandidate& a, const SlipCandidate& b) {
        return a.slip.weight != b.slip.weight ? a.slip.weight > b.slip.weight : a.slip.away < b.slip.away;
    });
}

std::vector<SlipCandidate> candidatesOfAllKinds(const Ground& ground, const Scope& scope, bool backwards,
                                                std::optional<std::uint64_t> wanted = {}) {
    std::vector<SlipCandidate> all;
    for (const SlipKind* kind : slipKinds()) {
        std::vector<SlipCandidate> more = candidatesOf(*kind, ground, scope, backwards, wanted);
        std::ranges::move(more, std::back_inserter(all));
    }
    likeliestFirst(all);
    return all;
}

std::vector<Slip> ofAllKinds(const Ground& ground, const Scope& scope, bool backwards, std::size_t most) {
    return settledList(candidatesOfAllKinds(ground, scope, backwards), ground, most);
}

Scope scopeOf(const Ground& ground, const Symptom& symptom, std::size_t most) {
    if (symptom.parts.empty()) return Scope(ground);
    return Scope(ground, symptom.parts, most);
}

}  // namespace

std::vector<Slip> slips(const SlipKind& kind, const Ground& ground) {
    return settledList(candidatesOf(kind, ground, Scope(ground), false), ground, kAll);
}

std::vector<Slip> mends(const SlipKind& kind, const Ground& ground, const Symptom& symptom) {
    std::vector<SlipCandidate> found = candidatesOf(kind, ground, scopeOf(ground, symptom, kAll), true);
    likeliestFirst(found);
    return settledList(std::move(found), ground, kAll);
}

std::vector<Slip> allSlips(const Ground& ground, std::size_t most) {
    return ofAllKinds(ground, Scope(ground), false, most);
}

std::vector<Slip> everySlip(const Ground& ground) {
    std::vector<Slip> slips;
    for (SlipCandidate& candidate : candidatesOfAllKinds(ground, Scope(ground), false)) {
        if (settle(candidate, ground)) slips.push_back(std::move(candidate.slip));
    }
    return slips;
}

std::vector<Slip> allMends(const Ground& ground, const Symptom& symptom, std::size_t most) {
    const std::size_t things = std::max(kFewestThings, most / kThingsForEachSlip);
    return ofAllKinds(ground, scopeOf(ground, symptom, things), true, most);
}

std::optional<Slip> mendTo(std::uint64_t circuit, const Ground& ground, const Symptom& symptom) {
    if (circuit == ground.circuit().now()) return std::nullopt;
    const Scope scope = scopeOf(ground, symptom, kThingsForOneCircuit);
    std::vector<Slip> found = settledList(candidatesOfAllKinds(ground, scope, true, circuit), ground, 1);
    return found.empty() ? std::nullopt : std::optional(std::move(found.front()));
}

}  // namespace tiepoint
