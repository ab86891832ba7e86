#include "core/hunt/plants.h"

#include "core/base/stopping.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

namespace tiepoint {
namespace {

constexpr std::size_t kMostSlips = 600;

/// Kind by kind: a jumper that is broken inside gives the same circuit as one that is missing, and both count.
std::vector<Slip> slipsToBlame(const Bench& target) {
    const Ground ground(buildLayout(std::make_shared<const Bench>(target)));
    std::vector<Slip> all;
    for (const SlipKind* kind : slipKinds()) {
        if (!faultOf(*kind)) continue;
        for (Slip& slip : slips(*kind, ground))
            if (all.size() < kMostSlips) all.push_back(std::move(slip));
    }
    return all;
}

/// A slip with what its bench shows.
struct SignedPlant {
    Plant plant;
    Signs signs;
};

std::optional<SignedPlant> trySlip(const HuntGround& ground, const Signs& sound, Slip slip) {
    const Bench& target = ground.target();
    const Fault* fault = faultOf(*slip.kind);
    std::vector<std::string> things = fault ? thingsToBlame(target, slip) : std::vector<std::string>();
    if (things.empty()) return std::nullopt;
    auto applied = apply(target, editOf(target, slip));
    if (!applied) return std::nullopt;
    SignedPlant found{{std::move(slip), std::move(things), fault, std::move(applied.value().bench), false, 0, {}}, {}};
    found.signs = ground.looksOf(found.plant.bench);
    if (!found.signs.solved || found.signs.looksLike(sound)) return std::nullopt;
    ground.measure(found.plant.bench, found.signs);
    found.plant.hidden = !found.plant.slip.wrong.conditions.empty();
    return found;
}

bool anyReadingDiffers(const Signs& signs, const Signs& sound) {
    for (std::size_t position = 0; position < signs.volts.size(); ++position) {
        for (std::size_t place = 0; place < signs.volts[position].size(); ++place)
            if (differ(signs.volts[position][place], sound.volts[position][place])) return true;
    }
    return false;
}

struct WherePut {
    std::size_t position, place;
    double of(const SignedPlant& plant) const { return plant.signs.volts[position][place]; }
};
using Candidates = std::vector<const SignedPlant*>;

/// How many candidates a reading leaves on average: the squares of its groups, over all.
double leaves(const Candidates& candidates, const WherePut& at) {
    std::vector<double> volts;
    for (const SignedPlant* each : candidates) volts.push_back(at.of(*each));
    std::ranges::sort(volts);
    double squares = 0, group = 0;
    for (std::size_t i = 0; i < volts.size(); ++i) {
        if (i > 0 && differ(volts[i], volts[i - 1])) {
            squares += group * group;
            group = 0;
        }
        ++group;
    }
    return (squares + group * group) / static_cast<double>(volts.size());
}

WherePut bestReading(const HuntGround& ground, const Candidates& candidates) {
    WherePut best{0, 0};
    double least = std::numeric_limits<double>::infinity();
    for (std::size_t position = 0; position < ground.positions().size(); ++position) {
        for (std::size_t place = 0; place < ground.places().size(); ++place) {
            const double left = leaves(candidates, {position, place});
            if (left >= least) continue;
            least = left;
            best = {position, place};
        }
    }
    return best;
}

bool blamesTheSame(const SignedPlant& one, const SignedPlant& other) {
    return std::ranges::any_of(one.plant.things, [&](const std::string& id) {
        return std::ranges::find(other.plant.things, id) != other.plant.things.end();
    });
}

/// Readings until only the thing is left that is to blame; nothing where they never get there.
std::optional<int> readingsTo(const HuntGround& ground, const SignedPlant& planted,
                              const std::vector<SignedPlant>& all) {
    Candidates left{&planted};
    for (const SignedPlant& each : all)
        if (each.plant.hidden && &each != &planted && each.signs.looksLike(planted.signs)) left.push_back(&each);
    int readings = 0;
    while (!std::ranges::all_of(left, [&](const SignedPlant* each) { return blamesTheSame(planted, *each); })) {
        const std::size_t before = left.size();
        const WherePut at = bestReading(ground, left);
        std::erase_if(left, [&](const SignedPlant* each) { return differ(at.of(*each), at.of(planted)); });
        if (left.size() == before) return std::nullopt;
        ++readings;
    }
    return std::max(readings, 1);
}

}  // namespace

std::string seenInLights(const HuntGround& ground, const Signs& sound, const Signs& signs) {
    for (std::size_t position = 0; position < signs.lights.size(); ++position) {
        for (std::size_t light = 0; light < signs.lights[position].size(); ++light) {
            if (signs.lights[position][light].isLike(sound.lights[position][light])) continue;
            const Seen wanted = sound.lights[position][light].seen, seen = signs.lights[position][light].seen;
            const Bench& bench = ground.target();
            const std::string clause = positionClause(bench, ground.controls(), ground.positions()[position]);
            const char* what = seen == Seen::Dark ? "stays dark"
                               : seen == Seen::Dim
                                   ? (wanted == Seen::Dark ? "glows though it should be dark" : "is only dim")
                               : wanted == Seen::Dark ? "is lit though it should be dark"
                                                      : "is brighter than it should be";
            const std::string& id = bench.parts[static_cast<std::size_t>(ground.lights()[light])].id;
            return clause.empty() ? fmt::format("{} {}.", id, what) : fmt::format("{} {} {}.", id, what, clause);
        }
    }
    return {};
}

std::vector<Plant> plantsOf(const HuntGround& ground) {
    std::vector<Plant> plants;
    if (!ground.black() || ground.lights().empty()) return plants;
    Signs sound = ground.looksOf(ground.target());
    if (!sound.solved) return plants;
    ground.measure(ground.target(), sound);
    std::vector<SignedPlant> all;
    for (Slip& slip : slipsToBlame(ground.target())) {
        stopIfAsked();
        if (auto found = trySlip(ground, sound, std::move(slip))) all.push_back(std::move(*found));
    }
    for (SignedPlant& each : all) {
        if (!anyReadingDiffers(each.signs, sound)) continue;
        const auto readings = readingsTo(ground, each, all);
        if (!readings) continue;
        plants.push_back(each.plant);
        plants.back().readings = *readings;
        plants.back().seen = seenInLights(ground, sound, each.signs);
    }
    return plants;
}

}  // namespace tiepoint
