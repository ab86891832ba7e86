#include "core/compare/behaviour_words.h"

#include "core/snapshot/lit.h"

#include <fmt/format.h>

namespace tiepoint {
namespace {

std::string shineWords(const Snapshot& snapshot, int light) {
    if (!isLit(snapshot, light)) return "dark";
    return fmt::format("lit, {:.0f} % bright", 100 * snapshot.brightness(light));
}

void addHolesOf(const ComparedSide& side, int part, std::vector<Hole>& holes) {
    if (!side.hasPlaces) return;
    for (const auto& hole : side.part(part).leads)
        if (hole) holes.push_back(*hole);
}

}  // namespace

BenchDifference BehaviourWords::countsApart(std::string_view one, std::string_view several, std::size_t mine,
                                            std::size_t target) {
    const auto counted = [&](std::size_t count) {
        return fmt::format("{} {}", count == 0 ? "no" : std::to_string(count), count == 1 ? one : several);
    };
    BenchDifference told;
    told.text = fmt::format("This bench has {}, the target {}.", counted(mine), counted(target));
    told.look = fmt::format("Count your {}: is each of them joined in?", several);
    return told;
}

std::string BehaviourWords::position(const Digits& own) const {
    std::string words;
    for (std::size_t c = 0; c < own.size(); ++c) {
        const Throw& each = mine_.controls()[c];
        if (each.isCap() && own[c] == 0) continue;
        const Part& part = mine_.side().part(each.part);
        words += fmt::format("{}{} {}", words.empty() ? "With " : " and ", part.id,
                             positionInWords(each, mine_.side().bench(), own[c]));
    }
    if (!words.empty()) return words + ", ";
    return own.empty() ? "" : "With nothing pressed, ";
}

BenchDifference BehaviourWords::noAnswer(bool isMine, const Digits& own) const {
    BenchDifference told;
    told.text = fmt::format("{}{} has no solution: sources fight each other, or a supply is shorted.", position(own),
                            isMine ? "this bench" : "the target");
    told.look = "Look whether plus and minus meet anywhere.";
    return told;
}

BenchDifference BehaviourWords::lightApart(const Snapshot& there, int light, const Snapshot& here, int lamp,
                                           const Digits& own) const {
    BenchDifference told;
    const std::string& id = mine_.side().part(lamp).id;
    told.text = fmt::format("{} is {}; on the target {} is {}.", position(own) + id, shineWords(here, lamp),
                            target_.side().part(light).id, shineWords(there, light));
    const std::string when = position(own);
    told.look = when.empty() ? fmt::format("Look at {}: does it do what was asked for?", id)
                             : fmt::format("{}does {} do what was asked for?", when, id);
    told.parts = {id};
    told.targetParts = {target_.side().part(light).id};
    addHolesOf(mine_.side(), lamp, told.holes);
    addHolesOf(target_.side(), light, told.targetHoles);
    return told;
}

}  // namespace tiepoint
