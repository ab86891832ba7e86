#include "core/hunt/ground.h"

#include "core/base/stopping.h"
#include "core/behaviour/meter_probe.h"
#include "core/behaviour/supply_nets.h"
#include "core/snapshot/lit.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

namespace tiepoint {
namespace {

constexpr double kDimBelow = 0.45;
constexpr double kLeastSeenChange = 0.15;  ///< of brightness, for who doesn't see both at once (common practice)
constexpr double kMeterShare = 0.03, kMeterVolt = 0.05;  ///< a cheap meter and parts of five per cent (common practice)
constexpr std::size_t kMostHuntPositions = 8;
constexpr std::size_t kMostHuntPlaces = 40;

/// The free holes of a strip, the outermost row or the nearest to its first lead first.
std::optional<Hole> tipHole(const Layout& layout, int occupied) {
    const int strip = layout.stripOfHole[static_cast<std::size_t>(occupied)];
    std::optional<Hole> best;
    int bestAway = 0;
    const Hole first = layout.holeAt(occupied);
    for (int hole = 0; hole < layout.holeCount(); ++hole) {
        if (layout.stripOfHole[static_cast<std::size_t>(hole)] != strip ||
            layout.jointOfHole[static_cast<std::size_t>(hole)] >= 0)
            continue;
        const Hole at = layout.holeAt(hole);
        const int line = static_cast<int>(at.line);
        const int middle = static_cast<int>(Line::E);
        const int away = isRail(at.line) ? std::abs(at.number - first.number) : -std::abs(2 * (line - middle) - 1);
        if (best && away >= bestAway) continue;
        best = at;
        bestAway = away;
    }
    return best;
}

/// Where the black tip goes in minus: in a rail on the right, where the meter stands, else as any tip.
std::optional<Hole> blackHole(const Layout& layout, int occupied) {
    if (!isRail(layout.holeAt(occupied).line)) return tipHole(layout, occupied);
    const int strip = layout.stripOfHole[static_cast<std::size_t>(occupied)];
    std::optional<Hole> best;
    for (int hole = 0; hole < layout.holeCount(); ++hole) {
        if (layout.stripOfHole[static_cast<std::size_t>(hole)] != strip ||
            layout.jointOfHole[static_cast<std::size_t>(hole)] >= 0)
            continue;
        if (const Hole at = layout.holeAt(hole); !best || at.number > best->number) best = at;
    }
    return best;
}

}  // namespace

Seen seenAt(double brightness) {
    return brightness < kVisibleBrightness ? Seen::Dark : brightness < kDimBelow ? Seen::Dim : Seen::Lit;
}

bool LightSign::isLike(const LightSign& other) const {
    return seen == other.seen || std::abs(brightness - other.brightness) < kLeastSeenChange;
}

bool Signs::looksLike(const Signs& other) const {
    for (std::size_t position = 0; position < lights.size(); ++position) {
        for (std::size_t light = 0; light < lights[position].size(); ++light)
            if (!lights[position][light].isLike(other.lights[position][light])) return false;
    }
    return true;
}

bool differ(double volt, double other) {
    if (std::isnan(volt) || std::isnan(other)) return std::isnan(volt) != std::isnan(other);
    return std::abs(volt - other) > kMeterVolt + kMeterShare * std::max(std::abs(volt), std::abs(other));
}

HuntGround::HuntGround(std::shared_ptr<const Bench> target)
    : target_(std::move(target)),
      controls_(throwsOf(*target_)) {
    const auto layout = buildLayout(target_);
    for (int part = 0; part < static_cast<int>(target_->parts.size()); ++part)
        if (target_->parts[static_cast<std::size_t>(part)].kind->emitsLight) lights_.push_back(part);
    findPlaces(*layout);
    findPositions(*layout);
}

void HuntGround::findPlaces(const Layout& layout) {
    const auto supplies = supplyNets(layout);
    if (supplies.empty()) return;
    std::set<int> strips;
    for (const Joint& joint : layout.joints) {
        if (joint.hole < 0) continue;
        if (!black_ && joint.net == supplies.front().minus) black_ = blackHole(layout, joint.hole);
        if (!strips.insert(layout.stripOfHole[static_cast<std::size_t>(joint.hole)]).second) continue;
        if (const auto hole = tipHole(layout, joint.hole); hole && places_.size() < kMostHuntPlaces)
            places_.push_back(*hole);
    }
}

void HuntGround::findPositions(const Layout& layout) {
    const Digits rest = digitsOf(controls_, *target_, {});
    positions_.push_back(rest);
    for (Digits& each : planPositions(layout, controls_, rest).others)
        if (positions_.size() < kMostHuntPositions) positions_.push_back(std::move(each));
}

Signs HuntGround::looksOf(const Bench& bench) const {
    Signs signs;
    PositionSolver solver(buildLayout(std::make_shared<const Bench>(bench)), controls_);
    for (const Digits& digits : positions_) {
        const auto snapshot = solver.solve(digits);
        if (snapshot->status() == Status::None) signs.solved = false;
        std::vector<LightSign>& signsOfLights = signs.lights.emplace_back();
        for (const int light : lights_) {
            const double brightness = snapshot->status() == Status::Solved ? snapshot->brightness(light) : 0;
            signsOfLights.push_back({seenAt(brightness), brightness});
        }
    }
    return signs;
}

void HuntGround::measure(const Bench& bench, Signs& signs) const {
    const auto layout = buildLayout(std::make_shared<const Bench>(bench));
    const int black = layout->netOfHole(layout->holeIndex(*black_));
    MeterProbe probe(layout, controls_);
    std::map<int, std::vector<double>> byNet;  // volts by position
    signs.volts.assign(positions_.size(), {});
    for (const Hole& place : places_) {
        stopIfAsked();
        const int net = layout->netOfHole(layout->holeIndex(place));
        auto& volts = byNet[net];
        if (volts.empty()) {
            for (const Digits& digits : positions_)
                volts.push_back(net == black ? 0 : probe.volts(digits, net, black).value);
        }
        for (std::size_t position = 0; position < positions_.size(); ++position)
            signs.volts[position].push_back(volts[position]);
    }
}

std::string positionClause(const Bench& bench, const std::vector<Throw>& controls, const Digits& digits) {
    const Digits rest = digitsOf(controls, bench, {});
    std::vector<std::pair<std::string, std::string>> moved;  // what, and how it stands
    for (std::size_t c = 0; c < controls.size(); ++c) {
        if (digits[c] == rest[c]) continue;
        const Part& part = bench.parts[static_cast<std::size_t>(controls[c].part)];
        moved.emplace_back(part.cap.empty() ? part.id : part.cap, positionInWords(controls[c], bench, digits[c]));
    }
    // "while A and S are pressed", "while A is pressed and S3 is towards b"
    std::string clause;
    for (std::size_t i = 0; i < moved.size(); ++i) {
        const bool shares = i + 1 < moved.size() && moved[i + 1].second == moved[i].second;
        const bool shared = i > 0 && moved[i - 1].second == moved[i].second;
        clause += clause.empty() ? "while " : " and ";
        clause += moved[i].first;
        if (!shares) clause += fmt::format(" {} {}", shared ? "are" : "is", moved[i].second);
    }
    return clause;
}

}  // namespace tiepoint
