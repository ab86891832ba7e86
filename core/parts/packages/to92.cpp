// TO-92 (IEC 60191, from memory): a small round body with one flat side, 4.8 mm across and 3.7 mm deep, on three thin legs in line that
// bend to holes one or two pitches apart. It stands clear of the board on them. The legs are numbered from the left, seen from above
// with the flat side below.

#include "core/parts/packages/packages.h"

namespace tiepoint {
namespace {

std::vector<Package> onlySize(std::span<const double>) {
    Package package;
    package.name = "to-92";
    package.reach = Reach::Rigid;
    package.footprint = {{0, 0}, {1, 0}, {2, 0}};
    package.spread = {{{0, 0}, {2, 0}, {4, 0}}, {{0, 0}, {1, 0}, {3, 0}}, {{0, 0}, {2, 0}, {3, 0}}};
    package.bodyLengthMm = 4.8;
    package.bodyWidthMm = 3.7;
    package.heightMm = 9;
    package.raised = true;
    return {package};
}

}  // namespace

PackageFamily to92Family() {
    PackageFamily family;
    family.name = "to-92";
    family.sizes = onlySize;
    return family;
}

}  // namespace tiepoint
