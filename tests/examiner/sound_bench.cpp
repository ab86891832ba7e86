#include "examiner/sound_bench.h"

#include "core/bench/validate.h"
#include "core/edit/clashes.h"
#include "examiner/draw_netlist.h"
#include "examiner/placer.h"

#include <algorithm>
#include <stdexcept>

namespace tiepoint::examiner {
namespace {

constexpr int kMostDraws = 400;
constexpr double kLarge = 0.03;  // share of benches of 60 parts and more

int drawnSize(Chance& chance) {
    if (chance.happens(kLarge)) return chance.within(60, 75);
    return chance.happens(0.5) ? chance.within(3, 8) : chance.within(5, 25);
}

}  // namespace

std::string whyNotSound(const Bench& bench, const std::set<std::string>& parked) {
    if (const auto valid = validate(bench); !valid) return "not valid: " + valid.error().message;
    if (!Occupancy(bench).all().empty()) return "can't be built";
    const auto positions = positionsOf(bench);
    const Behaviour behaviour = behave(bench, positions);
    if (!behaviour.isSafe()) return "over a limit";
    if (!behaviour.misprinted.empty()) return "a rail against its print";
    for (const auto& [light, brightness] : behaviour.moments[0].lights) {
        if (!parked.contains(light) && behaviour.brightest(light) < kBrightEnough) return light + " is dim";
        if (bench.findPart(light)->kind->needsResistor && behaviour.brightest(light) >= 1)
            return light + " is over its usual current";
    }
    const auto idle = idleSwitches(bench, parked);
    return idle.empty() ? "" : idle[0] + " has no effect";
}

SoundBench soundBench(std::uint64_t seed, std::optional<int> parts) {
    Chance chance(seed);
    const int size = parts ? *parts : drawnSize(chance);
    for (int draw = 1; draw <= kMostDraws; ++draw) {
        const Netlist netlist = drawNetlist(chance, size);
        auto bench = Placer(chance, netlist).place();
        if (!bench) continue;
        std::set<std::string> parked;
        for (const Member& member : netlist.members) {
            if (member.parked) parked.insert(member.part.id);
        }
        bench->title = "Sound bench " + std::to_string(seed);
        if (whyNotSound(*bench, parked).empty()) return {std::move(*bench), std::move(parked), draw};
    }
    throw std::runtime_error("no sound bench for seed " + std::to_string(seed));
}

}  // namespace tiepoint::examiner
