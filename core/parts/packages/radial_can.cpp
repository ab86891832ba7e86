// An aluminium electrolytic capacitor with both leads at one end: a can that stands on the board. Its size follows the charge that it is
// made to hold, capacitance times rated voltage, through the usual diameters (IEC 60384-4 names them; which charge goes into which is
// common practice of makers' tables for general purposes). The leads leave it 2 to 7.5 mm apart and bend to 1 to 3 pitches.

#include "core/parts/packages/packages.h"

#include <algorithm>
#include <array>

namespace tiepoint {
namespace {

struct Can {
    double mostCoulomb;  ///< capacitance times voltage
    double diameterMm, heightMm;
    int span;  ///< pitches that its leads bend to from the tray
};
constexpr std::array kCans = {Can{2e-3, 5, 11, 1},   Can{4e-3, 6.3, 11, 1},   Can{8e-3, 8, 11.5, 1},
                              Can{20e-3, 10, 16, 2}, Can{45e-3, 12.5, 20, 2}, Can{100e-3, 16, 25, 3},
                              Can{1e9, 18, 35.5, 3}};
constexpr double kMostSpan = 3;

std::vector<Package> sizesOfCans(std::span<const double>) {
    std::vector<Package> sizes;
    for (const Can& can : kCans) {
        Package package;
        package.name = "radial-can";
        package.reach = Reach::Bending;
        package.minSpan = 1;
        package.maxSpan = kMostSpan;
        package.shape = BodyShape::Round;
        package.bodyLengthMm = package.bodyWidthMm = can.diameterMm;
        package.heightMm = can.heightMm;
        package.defaultSpan = can.span;
        sizes.push_back(package);
    }
    return sizes;
}

std::size_t canFor(std::span<const double> figures) {
    constexpr double kRounding = 1 + 1e-9;
    const double coulomb = figures[0] * figures[1];
    const auto found =
        std::ranges::find_if(kCans, [&](const Can& can) { return coulomb <= can.mostCoulomb * kRounding; });
    return static_cast<std::size_t>(std::min(found, kCans.end() - 1) - kCans.begin());
}

}  // namespace

PackageFamily radialCanFamily() {
    PackageFamily family;
    family.name = "radial-can";
    family.numbers = {{"capacitance", 1e-9, 1, 100e-6, true}, {"voltage", 1, 1000, 16, true}};
    family.sizes = sizesOfCans;
    family.choose = canFor;
    return family;
}

}  // namespace tiepoint
