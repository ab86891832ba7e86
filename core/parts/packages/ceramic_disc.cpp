// A ceramic disc capacitor: a flat drop that stands on edge on two leads, 5 mm across and 2.5 mm thick where a kind says nothing else
// (makers' drawings, from memory). From above one sees its edge. The leads leave it 2.5 or 5 mm apart and bend to 1 to 4 pitches.

#include "core/parts/packages/packages.h"

namespace tiepoint {
namespace {

constexpr double kUsualDiameterMm = 5, kUsualThicknessMm = 2.5;
constexpr double kLegsShowMm = 2;

std::vector<Package> discSize(std::span<const double> figures) {
    Package package;
    package.name = "ceramic-disc";
    package.reach = Reach::Bending;
    package.minSpan = 1;
    package.maxSpan = 4;
    package.bodyLengthMm = figures[0];
    package.bodyWidthMm = figures[1];
    package.heightMm = figures[0] + kLegsShowMm;
    package.defaultSpan = 2;
    return {package};
}

}  // namespace

PackageFamily ceramicDiscFamily() {
    PackageFamily family;
    family.name = "ceramic-disc";
    family.numbers = {{"diameter", 3, 20, kUsualDiameterMm}, {"thickness", 1.5, 6, kUsualThicknessMm}};
    family.sizes = discSize;
    return family;
}

}  // namespace tiepoint
