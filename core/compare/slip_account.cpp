// One slip that explains all. The target is given the bench's ids and settings, as far as its parts have partners, so that its digest
// (core/slips/circuit_digest.h) is what the bench's would be with the slip undone; each change that undoes a slip near the differences then
// costs one comparison of two numbers.

#include "core/compare/account.h"
#include "core/slips/slip.h"

#include <algorithm>
#include <limits>
#include <optional>

namespace tiepoint {
namespace {

/// More differences than this aren't one slip: a part turned or shifted moves all of its leads.
constexpr std::size_t kMostExplained = 6;

/// Parts that the bench has under their id as the bench lists them: a digest goes by their order.
void sortLikeBench(const ComparedSide& mine, std::vector<Part>& parts) {
    std::ranges::stable_sort(parts, {}, [&](const Part& part) {
        const int own = mine.bench().partIndex(part.id);
        return own < 0 ? std::numeric_limits<int>::max() : own;
    });
}

/// The target with the bench's ids and settings where its parts have partners, in the bench's order.
Bench renamedTarget(const ComparedSide& mine, const ComparedSide& target, const CircuitDifference& difference) {
    Bench renamed = target.bench();
    renamed.pinned.clear();
    std::vector<int> partner(renamed.parts.size(), -1);
    for (std::size_t p = 0; p < difference.partOf.size(); ++p)
        if (difference.partOf[p] >= 0) partner[static_cast<std::size_t>(difference.partOf[p])] = static_cast<int>(p);
    const auto fresh = [&](const std::string& id) { return mine.bench().findPart(id) == nullptr ? id : id + "_"; };
    std::vector<std::pair<std::string, std::string>> names;
    for (std::size_t q = 0; q < renamed.parts.size(); ++q) {
        Part& part = renamed.parts[q];
        const std::string old = part.id;
        part.id = partner[q] < 0 ? fresh(old) : mine.part(partner[q]).id;
        names.emplace_back(old, part.id);
        if (partner[q] < 0) continue;
        const Part& like = mine.part(partner[q]);
        part.state = like.state;
        part.condition = like.condition;
        const std::vector<Setting> own = part.values;
        part.values = like.values;
        for (const auto& setting : difference.otherSettings) {
            if (setting.partner != static_cast<int>(q) || setting.state) continue;
            const auto index = static_cast<std::size_t>(setting.index);
            part.values[index] = own[index];
        }
    }
    sortLikeBench(mine, renamed.parts);
    for (Jumper& jumper : renamed.jumpers) {
        for (JumperEnd& end : jumper.ends) {
            Socket* socket = std::get_if<Socket>(&end);
            if (socket == nullptr) continue;
            const auto named = std::ranges::find(names, socket->part, &std::pair<std::string, std::string>::first);
            if (named != names.end()) socket->part = named->second;
        }
    }
    return renamed;
}

/// What on the target stands where the slip is: the partners of the parts that it names.
void addPartners(const ComparedSide& mine, const ComparedSide& target, const CircuitDifference& difference,
                 BenchDifference& told) {
    for (const std::string& id : told.parts) {
        const int part = mine.bench().partIndex(id);
        const int other = part < 0 ? -1 : difference.partOf[static_cast<std::size_t>(part)];
        if (other < 0) continue;
        told.targetParts.push_back(target.part(other).id);
        if (!target.hasPlaces) continue;
        for (const auto& hole : target.part(other).leads)
            if (hole) told.targetHoles.push_back(*hole);
    }
}

}  // namespace

std::vector<BenchDifference> slipAccount(const ComparedSide& mine, const ComparedSide& target,
                                         const CircuitDifference& difference,
                                         const std::vector<BenchDifference>& found) {
    if (!difference.onlyInFirst.empty() || !difference.onlyInSecond.empty() || found.size() > kMostExplained) return {};
    Symptom near;
    for (const BenchDifference& each : found) {
        for (const std::string& id : each.parts)
            if (mine.bench().findPart(id) != nullptr) near.parts.push_back(id);
    }
    const auto wanted = buildLayout(std::make_shared<const Bench>(renamedTarget(mine, target, difference)));
    std::size_t work = 0;
    const std::uint64_t digest = CircuitDigest(*wanted).after({}, work);
    const Ground ground(mine.layout);
    const std::optional<Slip> slip = mendTo(digest, ground, near);
    if (!slip) return {};
    BenchDifference told;
    told.text = slipInWords(mine.bench(), *slip);
    told.parts = slip->ids();
    std::erase_if(told.parts, [&](const std::string& id) {  // a jumper that only the mend puts there
        return mine.bench().findPart(id) == nullptr && mine.bench().findJumper(id) == nullptr;
    });
    if (told.parts.empty()) told.parts = found.front().parts;
    told.holes = slip->holes();
    told.look = (told.parts.empty() ? "" : "Look at " + told.parts.front() + ". ") + seenInWords(*slip);
    addPartners(mine, target, difference, told);
    if (told.targetParts.empty() && !found.empty()) {
        told.targetParts = found.front().targetParts;
        told.targetHoles = found.front().targetHoles;
    }
    return {told};
}

}  // namespace tiepoint
