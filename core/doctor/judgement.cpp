#include "core/doctor/judgement.h"

#include "core/behaviour/position_plan.h"
#include "core/snapshot/lit.h"
#include "core/snapshot/readings.h"

#include <algorithm>
#include <cmath>

namespace tiepoint {
namespace {

constexpr double kMeterErrorShare = 0.03, kMeterVolts = 0.05;
constexpr double kEyeShare = 0.1;
constexpr double kReadShare = 0.01;  ///< a value that is read off bands, a knob or a display
constexpr double kCurved = 1.1;      ///< slopes are taken upwards; downwards a twentieth less is a little more
/// A reading is hardly moved further by parts within their tolerance.
constexpr double kMostMovedShare = 0.25, kMostMovedBrightness = 0.25;
constexpr std::size_t kPositionsOfAlways = 16;

/// How far a figure may move while every part stays within its tolerance.
template <class Figure>
double movedByTolerance(const Foresight& foresight, double nominal, Figure&& figure) {
    double sum = 0;
    for (int loose = 0; loose < static_cast<int>(foresight.loose().size()); ++loose) {
        const double moved = figure(loose);
        if (!std::isnan(moved)) sum += std::abs(moved - nominal);
    }
    return kCurved * sum;
}

struct Range {
    double least, most;
    double beyond(double value) const { return std::max({0.0, least - value, value - most}); }
};

Range rangeOf(Shine shine) {
    constexpr double kAny = 2;
    switch (shine) {
        case Shine::Dark:
            return {-kAny, kVisibleBrightness * (1 + kEyeShare)};
        case Shine::Dim:
            return {kVisibleBrightness * (1 - kEyeShare), kDimBrightness * (1 + kEyeShare)};
        case Shine::Lit:
            return {kDimBrightness * (1 - kEyeShare), kAny};
    }
    return {-kAny, kAny};
}

struct SuspectJudge {
    Foresight& foresight;
    const SuspectList& suspects;
    const Suspect& suspect;
    const Observation& seen;

    bool shines(const Digits& digits, int part, const Range& range) const {
        const double nominal = foresight.brightness(suspect, digits, part);
        const double beyond = std::isnan(nominal) ? 0 : range.beyond(nominal);
        if (beyond == 0) return true;
        if (beyond > kMostMovedBrightness) return false;
        return beyond <= movedByTolerance(foresight, nominal, [&](int loose) {
                   return foresight.brightness(suspect, digits, part, loose);
               });
    }

    bool operator()(const SawLight& saw) const {
        const int part = suspects.plan().partIndex(saw.part);
        if (!saw.always) return shines(seen.digits, part, rangeOf(saw.shine));
        const Range shining{rangeOf(Shine::Dim).least, rangeOf(Shine::Lit).most};
        const auto positions = positionsToLookAt(suspects.ground().layout(), kPositionsOfAlways);
        return std::ranges::all_of(positions, [&](const Digits& digits) { return shines(digits, part, shining); });
    }
    bool operator()(const SawVolts& saw) const {
        const double nominal = foresight.volts(suspect, seen.digits, saw.red, seen.black);
        if (std::isnan(nominal)) return true;
        const double beyond = std::abs(saw.volt - nominal) - meterAllowance(saw.volt, nominal);
        if (beyond <= 0) return true;
        if (beyond > kMostMovedShare * std::max(std::abs(saw.volt), std::abs(nominal))) return false;
        return beyond <= movedByTolerance(foresight, nominal, [&](int loose) {
                   return foresight.volts(suspect, seen.digits, saw.red, seen.black, loose);
               });
    }
    bool operator()(const SawGlow& saw) const {
        const double nominal = foresight.glow(suspect, seen.digits, saw.red, seen.black);
        if (std::isnan(nominal)) return true;
        return saw.glows ? nominal >= rangeOf(Shine::Dim).least : nominal <= rangeOf(Shine::Dark).most;
    }
    bool operator()(const HeardBeep& heard) const {
        const double ohm = foresight.ohms(suspect, seen.digits, heard.one, heard.other);
        return std::isnan(ohm) || (heard.beeps ? ohm < kSurelySilentOhm : ohm > kSurelyBeepsOhm);
    }
    bool operator()(const SawExtra& saw) const {
        const auto pair = std::minmax({stripOf(saw.one), stripOf(saw.other)});
        return saw.jumper == (std::ranges::find(suspect.extra, std::pair<int, int>(pair)) != suspect.extra.end());
    }
    bool operator()(const SawBuilt& saw) const {
        if (suspects.plan().findBoard(saw.id)) return saw.asPlanned || suspect.isVisible();
        return saw.asPlanned != suspect.looks.contains(saw.id);
    }
    bool operator()(const SawTip& saw) const {
        if (suspect.missing.contains(saw.id)) return false;
        return tipOf(saw.id, saw.tip) == stripOf(saw.in);
    }
    bool operator()(const SawSetting& saw) const {
        const Part& part = *suspects.plan().findPart(saw.part);
        const auto other = suspect.settings.find({saw.part, saw.state, saw.index});
        const bool isOther = other != suspect.settings.end();
        const double planned = saw.state ? part.stateValue(saw.index) : part.value(saw.index);
        const double value = isOther ? other->second : planned;
        return std::abs(value - saw.value) <= kReadShare * std::max(std::abs(value), std::abs(saw.value));
    }
    bool operator()(const SawMissing& saw) const { return suspect.missing.contains(saw.jumper); }
    bool operator()(const SawHot& saw) const {
        auto bench = std::make_shared<const Bench>(suspects.built(suspect));
        const int part = bench->partIndex(saw.part);
        Inputs inputs;
        const std::vector<Throw> throws = throwsOf(suspects.plan());
        for (std::size_t t = 0; t < throws.size(); ++t) {
            if (throws[t].isCap() && seen.digits[t] != 0)
                inputs.held.insert(suspects.plan().parts[static_cast<std::size_t>(throws[t].part)].id);
        }
        const auto snapshot = evaluate(bench, inputs);
        if (snapshot->status() == Status::None) return true;
        return std::ranges::any_of(ratingShares(*snapshot, part),
                                   [](const RatingShare& share) { return share.rating->maximum && share.share() > 1; });
    }

    int stripOf(const Hole& hole) const {
        const int index = suspects.ground().holeIndex(hole);
        return index < 0 ? -1 : suspects.ground().stripOf(index);
    }
    /// The strip in which a tip would be seen; -1: it hangs, or ends in a socket.
    int tipOf(const std::string& id, int tip) const {
        const auto moved = suspect.tips.find({id, tip});
        if (moved != suspect.tips.end()) return moved->second;
        if (const Part* part = suspects.plan().findPart(id)) {
            const auto& hole = part->leads[static_cast<std::size_t>(tip)];
            return hole ? stripOf(*hole) : -1;
        }
        const JumperEnd& end = suspects.plan().findJumper(id)->ends[static_cast<std::size_t>(tip)];
        const Hole* hole = std::get_if<Hole>(&end);
        return hole ? stripOf(*hole) : -1;
    }
};

}  // namespace

double meterAllowance(double oneVolt, double otherVolt) {
    return kMeterErrorShare * std::max(std::abs(oneVolt), std::abs(otherVolt)) + kMeterVolts;
}

Shine shineOf(double brightness) {
    if (brightness < kVisibleBrightness) return Shine::Dark;
    return brightness < kDimBrightness ? Shine::Dim : Shine::Lit;
}

bool fits(Foresight& foresight, const SuspectList& suspects, const Suspect& suspect, const Observation& observation) {
    return std::visit(SuspectJudge{foresight, suspects, suspect, observation}, observation.what);
}

std::vector<Digits> positionsToLookAt(const Layout& plan, std::size_t most) {
    std::vector<Digits> positions{restOf(*plan.bench)};
    const PositionPlan others = planPositions(plan, throwsOf(*plan.bench), positions.front());
    for (const Digits& digits : others.others) {
        if (positions.size() == most) break;
        positions.push_back(digits);
    }
    return positions;
}

}  // namespace tiepoint
