#include "core/sheet/symptoms.h"

#include "core/base/csv.h"
#include "core/base/quantity.h"
#include "core/base/stopping.h"
#include "core/behaviour/behaviour.h"
#include "core/behaviour/position_solver.h"
#include "core/sheet/measured_places.h"
#include "core/snapshot/lit.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <optional>

namespace tiepoint {
namespace {

constexpr std::size_t kMostTriedPositions = 8;  ///< positions that each slip is tried in
constexpr double kSeenBrightness = 0.12;        ///< less of a difference nobody sees
constexpr double kTellingVolt = 0.3;            ///< less doesn't prove anything on a learner's meter
constexpr std::string_view kNothingSeen = "Nothing is to be seen.";

/// What is looked at in one position.
struct Sight {
    Status status = Status::None;
    bool limiting = false;
    std::vector<double> brightness;  ///< by light; dark is 0
    std::vector<double> volts;       ///< by place
};

bool isLimiting(const Snapshot& snapshot) {
    return std::ranges::any_of(snapshot.solution.elementLimiting, [](char each) { return each != 0; });
}

class SymptomFinder {
public:
    SymptomFinder(const std::shared_ptr<const Bench>& sound, const std::function<bool(const Slip&)>& possible)
        : layout_(buildLayout(sound)),
          ground_(layout_),
          possible_(possible) {
        const Behaviour behaviour = behaviourAround(evaluate(sound));
        controls_ = behaviour.controls;
        lights_ = behaviour.lights;
        places_ = touchableLegs(*layout_);
        for (const BehaviourRow& row : behaviour.rows) {
            if (rows_.size() == kMostTriedPositions) break;
            rows_.push_back(row.digits);
            titles_.push_back(positionInTitle(behaviour, row.digits));
            sound_.push_back(sightOf(*row.snapshot));
        }
    }

    std::vector<SlipSeen> run() const {
        std::vector<SlipSeen> all;
        for (Slip& slip : allSlips(ground_, std::numeric_limits<std::size_t>::max())) {
            stopIfAsked();
            if (possible_ && !possible_(slip)) continue;
            SlipSeen seen;
            const auto sights = sightsWith(slip);
            if (!sights) continue;
            seen.text = slipInWords(bench(), slip);
            seen.seen = seenWords(*sights);
            seen.look = seenInWords(slip);
            seen.proof = proofWords(*sights);
            seen.mend = mendInWords(bench(), slip);
            seen.slip = std::move(slip);
            all.push_back(std::move(seen));
        }
        return all;
    }

private:
    const Bench& bench() const { return *layout_->bench; }

    Sight sightOf(const Snapshot& snapshot) const {
        Sight sight;
        sight.status = snapshot.status();
        sight.limiting = isLimiting(snapshot);
        for (const int light : lights_)
            sight.brightness.push_back(
                sight.status == Status::Solved && isLit(snapshot, light) ? snapshot.brightness(light) : 0);
        for (const TouchableLeg& place : places_) {
            const int hole = snapshot.layout->holeIndex(place.hole);
            sight.volts.push_back(
                sight.status == Status::Solved
                    ? snapshot.solution.netVoltage[static_cast<std::size_t>(snapshot.layout->netOfHole(hole))]
                    : std::nan(""));
        }
        return sight;
    }

    /// By position; nothing where the change can't be made.
    std::optional<std::vector<Sight>> sightsWith(const Slip& slip) const {
        const auto changed = apply(bench(), editOf(bench(), slip));
        if (!changed) return std::nullopt;
        std::vector<Throw> controls = throwsOf(changed->bench);
        if (controls.size() != controls_.size()) return std::nullopt;
        PositionSolver solver(buildLayout(std::make_shared<const Bench>(changed->bench)), std::move(controls));
        std::vector<Sight> sights;
        for (const Digits& digits : rows_) sights.push_back(sightOf(*solver.solve(digits)));
        return sights;
    }

    std::string lightWords(const std::vector<Sight>& sights, std::size_t light) const {
        bool wasEver = false, isEver = false, isAlways = true, wasAlways = true, otherwise = false;
        double dimmer = 0, brighter = 0;
        for (std::size_t row = 0; row < sights.size(); ++row) {
            const double was = sound_[row].brightness[light], is = sights[row].brightness[light];
            wasEver |= was > 0;
            isEver |= is > 0;
            wasAlways &= was > 0;
            isAlways &= is > 0;
            otherwise |= (was > 0) != (is > 0);
            if (was > 0 && is > 0) {
                dimmer = std::max(dimmer, was - is);
                brighter = std::max(brighter, is - was);
            }
        }
        if (wasEver && !isEver) return "never lights";
        if (isAlways && !wasAlways) return "is always lit";
        if (otherwise) return "lights in other positions than it should";
        if (dimmer > kSeenBrightness) return "is dim";
        return brighter > kSeenBrightness ? "is too bright" : "";
    }

    std::string seenWords(const std::vector<Sight>& sights) const {
        std::string words;
        const auto add = [&](const std::string& more) { words += (words.empty() ? "" : " ") + more + "."; };
        bool limiting = false, none = false;
        for (std::size_t row = 0; row < sights.size(); ++row) {
            limiting |= sights[row].limiting && !sound_[row].limiting;
            none |= sights[row].status == Status::None;
        }
        if (none) return "Sources work against each other: something gets hot.";
        for (std::size_t light = 0; light < lights_.size(); ++light) {
            const std::string does = lightWords(sights, light);
            if (!does.empty()) add(bench().parts[static_cast<std::size_t>(lights_[light])].id + " " + does);
        }
        if (limiting) add("The supply is at its current limit");
        return words.empty() ? std::string(kNothingSeen) : words;
    }

    /// The reading that is farthest from what it should be, in the position in which it is.
    std::string proofWords(const std::vector<Sight>& sights) const {
        double most = kTellingVolt;
        std::string words;
        for (std::size_t row = 0; row < sights.size(); ++row) {
            for (std::size_t place = 0; place < places_.size(); ++place) {
                const double should = sound_[row].volts[place], is = sights[row].volts[place];
                if (std::isnan(should) || std::isnan(is) || std::abs(is - should) <= most) continue;
                most = std::abs(is - should);
                words = fmt::format("{}, volts at {}: {}, where {} should be.", titles_[row], places_[place].where,
                                    formatQuantity(is, "V"), formatQuantity(should, "V"));
            }
        }
        return words;
    }

    std::shared_ptr<const Layout> layout_;
    Ground ground_;
    const std::function<bool(const Slip&)>& possible_;
    std::vector<Throw> controls_;
    std::vector<int> lights_;
    std::vector<TouchableLeg> places_;
    std::vector<Digits> rows_;
    std::vector<std::string> titles_;
    std::vector<Sight> sound_;  ///< by position
};

}  // namespace

std::vector<SlipSeen> slipsAsSeen(const std::shared_ptr<const Bench>& sound,
                                  const std::function<bool(const Slip&)>& possible) {
    return SymptomFinder(sound, possible).run();
}

std::vector<EyeSymptom> bySymptom(const std::vector<SlipSeen>& slips) {
    std::vector<EyeSymptom> groups;
    std::map<std::string, double> weight;
    for (const SlipSeen& each : slips) {
        auto group = std::ranges::find(groups, each.seen, &EyeSymptom::seen);
        if (group == groups.end()) group = groups.insert(groups.end(), EyeSymptom{each.seen, {}});
        group->slips.push_back(each);
        weight[each.seen] += each.slip.weight;
    }
    std::ranges::stable_sort(groups, [&](const EyeSymptom& a, const EyeSymptom& b) {
        const bool aSeen = a.seen != kNothingSeen, bSeen = b.seen != kNothingSeen;
        return aSeen != bSeen ? aSeen : weight[a.seen] > weight[b.seen];
    });
    return groups;
}

std::string slipsAsCsv(const std::vector<SlipSeen>& slips) {
    std::string csv = csvLine({"kind", "slip", "seen", "look", "proof", "mend", "weight"});
    for (const SlipSeen& each : slips)
        csv += csvLine({std::string(each.slip.kind->name), csvText(each.text), csvText(each.seen), csvText(each.look),
                        csvText(each.proof), csvText(each.mend), fmt::format("{:g}", each.slip.weight)});
    return csv;
}

}  // namespace tiepoint
