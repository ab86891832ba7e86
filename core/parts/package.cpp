// The table of packages, and how a part lies for the holes its leads are in.

#include "core/parts/package.h"

#include "core/parts/packages/packages.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <limits>
#include <numbers>

namespace tiepoint {
namespace {

using LeadPlaces = std::span<const std::optional<Point>>;

constexpr double kQuarterTurn = std::numbers::pi / 2;
constexpr int kQuarterTurns = 4;
constexpr double kFitMm = 0.2;           ///< how far a rigid leg gives
constexpr double kSpanTolerance = 1e-6;  ///< pitches; holes are exact, sums of doubles are not

/// A quarter turn clockwise on screen takes right to down, since y points down.
Point turnedAbout(Point p, int quarters) {
    for (int i = 0; i < quarters; ++i) p = {-p.y, p.x};
    return p;
}

int firstPresent(LeadPlaces leads) {
    const auto found = std::find_if(leads.begin(), leads.end(), [](const auto& lead) { return lead.has_value(); });
    return found == leads.end() ? -1 : static_cast<int>(found - leads.begin());
}

/// How a rigid package lies: its legs' places and its turn.
struct Lie {
    const std::vector<Point>* footprint;
    int quarters = 0;
    int matching = 0;  ///< legs that are where they belong
};

/// Where leg `lead` belongs when leg `anchor` is at its place.
Point legPlace(const Lie& lie, LeadPlaces leads, int anchor, int lead) {
    const Point offset = (*lie.footprint)[lead] - (*lie.footprint)[anchor];
    return *leads[anchor] + turnedAbout(offset, lie.quarters) * kPitchMm;
}

int matchingLegs(const Lie& lie, LeadPlaces leads, int anchor) {
    int matching = 0;
    for (int i = 0; i < static_cast<int>(leads.size()); ++i) {
        if (leads[i] && distance(*leads[i], legPlace(lie, leads, anchor, i)) < kFitMm) ++matching;
    }
    return matching;
}

/// The footprint and turn that suit most legs; the first of equals, so that a lone leg lies unturned.
Lie bestLie(const Package& package, LeadPlaces leads, int anchor) {
    Lie best{&package.footprint};
    const auto tryTurns = [&](const std::vector<Point>& footprint) {
        for (int quarters = 0; quarters < kQuarterTurns; ++quarters) {
            Lie lie{&footprint, quarters};
            lie.matching = matchingLegs(lie, leads, anchor);
            if (lie.matching > best.matching) best = lie;
        }
    };
    tryTurns(package.footprint);
    for (const auto& footprint : package.spread) tryTurns(footprint);
    return best;
}

Point middleOf(const std::vector<Point>& footprint) {
    const auto [left, right] =
        std::minmax_element(footprint.begin(), footprint.end(), [](Point a, Point b) { return a.x < b.x; });
    const auto [top, bottom] =
        std::minmax_element(footprint.begin(), footprint.end(), [](Point a, Point b) { return a.y < b.y; });
    return {(left->x + right->x) / 2, (top->y + bottom->y) / 2};
}

Outline bodyOutline(const Package& package, Point centre, double angle) {
    return {package.shape, centre, angle, package.bodyLengthMm / 2, package.bodyWidthMm / 2};
}

Pose rigidPose(const Package& package, LeadPlaces leads, int anchor) {
    const Lie lie = bestLie(package, leads, anchor);
    const Point offset = middleOf(*lie.footprint) - (*lie.footprint)[anchor];
    Pose pose;
    pose.centre = *leads[anchor] + turnedAbout(offset, lie.quarters) * kPitchMm;
    pose.angle = lie.quarters * kQuarterTurn;
    pose.body = bodyOutline(package, pose.centre, pose.angle);
    return pose;
}

double spanPitches(LeadPlaces leads) { return distance(*leads[0], *leads[1]) / kPitchMm; }

Pose bendingPose(const Package& package, LeadPlaces leads) {
    const Point reach{package.defaultSpan * kPitchMm, 0};
    const Point first = leads[0] ? *leads[0] : *leads[1] - reach;
    const Point second = leads[1] ? *leads[1] : first + reach;
    const Point along = second - first;
    Pose pose;
    pose.angle = std::atan2(along.y, along.x);
    pose.standing = package.standingMaxSpan > 0 && length(along) / kPitchMm < package.minSpan - kSpanTolerance;
    pose.centre = pose.standing ? first : (first + second) * 0.5;
    constexpr double kBentPitches = 2;
    if (!pose.standing && length(along) / kPitchMm > kBentPitches - kSpanTolerance)
        pose.centre = pose.centre + along * (package.towardSecondMm / length(along));
    pose.body = bodyOutline(package, pose.centre, pose.angle);
    if (pose.standing) {
        pose.body.shape = BodyShape::Round;
        pose.body.halfLength = pose.body.halfWidth;
    }
    return pose;
}

/// "3" or "2.5".
std::string holesText(double pitches) { return fmt::format("{:.3g}", std::round(pitches * 10) / 10); }

/// Names the first leg that misses its place, by its distance from the first one.
std::optional<std::string> rigidMisfit(const Package& package, LeadPlaces leads, int anchor) {
    const Lie lie = bestLie(package, leads, anchor);
    for (int i = 0; i < static_cast<int>(leads.size()); ++i) {
        if (!leads[i] || distance(*leads[i], legPlace(lie, leads, anchor, i)) < kFitMm) continue;
        const double legs = length((*lie.footprint)[i] - (*lie.footprint)[anchor]);
        const double holes = distance(*leads[i], *leads[anchor]) / kPitchMm;
        if (!package.spread.empty()) return "its legs bend to three holes in line, one or two apart";
        if (std::abs(legs - holes) * kPitchMm < kFitMm) return "its legs don't fall on these holes";
        return fmt::format("its legs are {} holes apart; these holes are {} apart", holesText(legs), holesText(holes));
    }
    return std::nullopt;
}

std::optional<std::string> bendingMisfit(const Package& package, LeadPlaces leads) {
    if (!leads[0] || !leads[1]) return std::nullopt;
    const double span = spanPitches(leads);
    const double least = package.standingMaxSpan > 0 ? 1 : package.minSpan;
    if (span > package.maxSpan + kSpanTolerance) {
        return fmt::format("its leads reach {} holes at most; these are {} apart", holesText(package.maxSpan),
                           holesText(span));
    }
    if (span < least - kSpanTolerance) {
        return fmt::format("its leads need at least {} hole spacing between them", holesText(least));
    }
    return std::nullopt;
}

std::array<Point, 2> axesOf(const Outline& box) {
    const Point along{std::cos(box.angle), std::sin(box.angle)};
    return {along, {-along.y, along.x}};
}

/// Half the breadth of a box seen along an axis.
double reachAlong(const Outline& box, Point axis) {
    const auto [along, across] = axesOf(box);
    return box.halfLength * std::abs(dot(along, axis)) + box.halfWidth * std::abs(dot(across, axis));
}

/// Two boxes are apart if they are apart along one of their four axes.
double boxDepth(const Outline& a, const Outline& b) {
    const auto axesA = axesOf(a);
    const auto axesB = axesOf(b);
    double depth = std::numeric_limits<double>::infinity();
    for (const Point axis : {axesA[0], axesA[1], axesB[0], axesB[1]}) {
        const double apart = std::abs(dot(b.centre - a.centre, axis));
        depth = std::min(depth, reachAlong(a, axis) + reachAlong(b, axis) - apart);
    }
    return depth;
}

double circleBoxDepth(const Outline& circle, const Outline& box) {
    const auto [along, across] = axesOf(box);
    const Point offset = circle.centre - box.centre;
    const double outsideX = std::max(0.0, std::abs(dot(offset, along)) - box.halfLength);
    const double outsideY = std::max(0.0, std::abs(dot(offset, across)) - box.halfWidth);
    return circle.halfLength - std::hypot(outsideX, outsideY);
}

double overlapDepth(const Outline& a, const Outline& b) {
    const bool roundA = a.shape == BodyShape::Round;
    const bool roundB = b.shape == BodyShape::Round;
    if (roundA && roundB) return a.halfLength + b.halfLength - distance(a.centre, b.centre);
    if (roundA) return circleBoxDepth(a, b);
    if (roundB) return circleBoxDepth(b, a);
    return boxDepth(a, b);
}

}  // namespace

std::span<const Package> packages() {
    static const std::array kPackages = {
        benchSupplyPackage(),      usbSupplyPackage(),          cellsPackage(),           block9VPackage(),
        axialQuarterWattPackage(), axialDiodePackage(),         led5mmPackage(),          pushButtonPackage(),
        slideSwitchPackage(),      potentiometerPackage(),      lampWiredPackage(),       togglePackage(),
        multimeterPackage(),       axialChokePackage(),         do41DiodePackage(),       photoresistor5mmPackage(),
        thermistorBeadPackage(),   phototransistor5mmPackage(), rgbLed5mmPackage(),       solarCellPackage(),
        buzzerPackage(),           motorCanPackage(),           relayChangeoverPackage(), signalSourcePackage(),
        logicProbePackage(),       oscilloscopePackage(),
    };
    return kPackages;
}

const Package* findPackage(std::string_view name) {
    for (const Package& package : packages()) {
        if (package.name == name) return &package;
    }
    return nullptr;
}

std::optional<Pose> poseOf(const Package& package, std::span<const std::optional<Point>> leadsMm) {
    const int anchor = firstPresent(leadsMm);
    if (anchor < 0 || package.reach == Reach::Flying) return std::nullopt;
    return package.reach == Reach::Rigid ? rigidPose(package, leadsMm, anchor) : bendingPose(package, leadsMm);
}

bool bendsLegs(const Package& package) { return package.reach == Reach::Bending || !package.spread.empty(); }

const std::vector<Point>& footprintFor(const Package& package, std::span<const std::optional<Point>> leadsMm) {
    const int anchor = firstPresent(leadsMm);
    return anchor < 0 ? package.footprint : *bestLie(package, leadsMm, anchor).footprint;
}

std::vector<Point> legPlaces(const Package& package, std::span<const std::optional<Point>> leadsMm) {
    const int anchor = firstPresent(leadsMm);
    assert(anchor >= 0);
    const Lie lie = bestLie(package, leadsMm, anchor);
    std::vector<Point> places;
    for (int i = 0; i < static_cast<int>(leadsMm.size()); ++i) places.push_back(legPlace(lie, leadsMm, anchor, i));
    return places;
}

std::optional<std::string> misfit(const Package& package, std::span<const std::optional<Point>> leadsMm) {
    const int anchor = firstPresent(leadsMm);
    if (anchor < 0 || package.reach == Reach::Flying) return std::nullopt;
    return package.reach == Reach::Rigid ? rigidMisfit(package, leadsMm, anchor) : bendingMisfit(package, leadsMm);
}

bool overlap(const Outline& a, const Outline& b) {
    constexpr double kTouchMm = 0.05;
    return overlapDepth(a, b) > kTouchMm;
}

}  // namespace tiepoint
