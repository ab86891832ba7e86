// The dual in-line package: two rows of legs, 3 pitches apart, or 6 for wide ones; one pitch from leg to leg. Lengths after the outlines
// of JEDEC MS-001 and MS-011 (from memory): those with 14 and 16 legs are one moulding's length apart by a hair, and others are half a
// millimetre shorter than their columns. Leg 1 stands at the left of the lower row with the notch at the left, and legs count against
// the clock seen from above.

#include "core/parts/packages/packages.h"

#include <cmath>
#include <map>

namespace tiepoint {
namespace {

constexpr double kLeastLegs = 4, kMostLegs = 40;
constexpr double kNarrowRows = 3, kWideRows = 6;  ///< pitches from row to row
constexpr double kNarrowBodyMm = 6.35, kWideBodyMm = 13.8;
constexpr double kHeightMm = 4.5;
constexpr double kShorterMm = 0.5;

double bodyLengthMm(int legs) {
    static const std::map<int, double> kDrawn = {{8, 9.3}, {14, 19.05}, {16, 19.3}};
    const auto drawn = kDrawn.find(legs);
    return drawn != kDrawn.end() ? drawn->second : legs / 2 * kPitchMm - kShorterMm;
}

std::vector<Package> sizesOf(std::span<const double> figures) {
    const int legs = static_cast<int>(figures[0]), columns = legs / 2;
    Package package;
    package.name = "dip";
    package.reach = Reach::Rigid;
    for (int i = 0; i < columns; ++i) package.footprint.push_back({static_cast<double>(i), 0});
    for (int i = columns; i-- > 0;) package.footprint.push_back({static_cast<double>(i), -figures[1]});
    package.bodyLengthMm = bodyLengthMm(legs);
    package.bodyWidthMm = figures[1] == kNarrowRows ? kNarrowBodyMm : kWideBodyMm;
    package.heightMm = kHeightMm;
    return {package};
}

}  // namespace

PackageFamily dipFamily() {
    PackageFamily family;
    family.name = "dip";
    family.numbers = {{"legs", kLeastLegs, kMostLegs, std::nullopt, false, "an even number",
                       [](double legs) { return std::fmod(legs, 2) == 0; }},
                      {"rows", kNarrowRows, kWideRows, kNarrowRows, false, "3 or 6 pitches",
                       [](double rows) { return rows == kNarrowRows || rows == kWideRows; }}};
    family.sizes = sizesOf;
    return family;
}

}  // namespace tiepoint
