// The bench supply: a box of 30 x 51 mm that stands at the left of the boards; its sockets lie in the right
// half of its face.

#include "core/parts/packages/packages.h"

namespace tiepoint {

Package benchSupplyPackage() {
    Package package;
    package.name = "bench-supply";
    package.reach = Reach::Flying;
    // The minus lead leaves the lower of the two minus sockets.
    package.footprint = {{22.5, 26.5}, {22.5, 44.5}};
    package.bodyLengthMm = 30;
    package.bodyWidthMm = 51;
    return package;
}

}  // namespace tiepoint
