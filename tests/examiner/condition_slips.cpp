// Things that look sound and aren't: the member "condition" of a part or a jumper in a bench file. It is written into the text, so that a
// format that doesn't know it (yet) warns, and then no such slip is drawn.
#include "core/bench/bench_file.h"
#include "examiner/hands.h"

namespace tiepoint::examiner {
namespace {

using Maybe = std::optional<Slip>;

Maybe inCondition(const Bench& bench, const std::string& id, const std::string& condition) {
    std::string text = writeBench(bench);
    const std::string head = "{\"id\": \"" + id + "\"";
    const auto at = text.find(head);
    if (at == std::string::npos) return {};
    text.insert(at + head.size(), ", \"condition\": \"" + condition + "\"");
    auto read = readBench(text);
    if (!read || !read.value().warnings.empty()) return {};
    Slip slip;
    slip.words = id + " is " + condition;
    slip.things = {id};
    for (const Pin& pin : pinsOf(bench)) {
        if (pin.id == id) slip.holes.push_back(pin.hole);
    }
    slip.bench = std::move(read.value().bench);
    return slip;
}

Maybe partInCondition(const Bench& bench, Chance& chance, bool (*suits)(const PartKind&), const char* condition) {
    const auto part = pick(bench.parts, chance, [suits](const Part& each) { return suits(*each.kind); });
    return part ? inCondition(bench, part->id, condition) : std::nullopt;
}

Maybe deadLight(const Bench& bench, Chance& chance) {
    return partInCondition(
        bench, chance, [](const PartKind& kind) { return kind.emitsLight; }, "dead");
}

Maybe openInside(const Bench& bench, Chance& chance) {
    return partInCondition(
        bench, chance, [](const PartKind& kind) { return kind.family == "Resistor" || kind.family == "Diode"; },
        "open inside");
}

Maybe dryContact(const Bench& bench, Chance& chance) {
    return partInCondition(
        bench, chance, [](const PartKind& kind) { return kind.family == "Switch"; }, "dry contact");
}

Maybe brokenJumper(const Bench& bench, Chance& chance) {
    if (bench.jumpers.empty()) return {};
    return inCondition(bench, chance.oneOf(bench.jumpers).id, "open inside");
}

}  // namespace

std::vector<SlipKind> conditionSlips() {
    return {
        {"dead light", 1.5, deadLight},
        {"part open inside", 0.5, openInside},
        {"broken jumper", 1.5, brokenJumper},
        {"dry contact", 0.7, dryContact},
    };
}

}  // namespace tiepoint::examiner
