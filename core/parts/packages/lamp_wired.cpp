// A miniature lamp with wire ends, seen from above: a round bulb, 12 mm high (from memory).

#include "core/parts/packages/packages.h"

namespace tiepoint {

Package lampWiredPackage() {
    Package package;
    package.name = "lamp-wired";
    package.reach = Reach::Bending;
    package.minSpan = 1;
    package.maxSpan = 8;
    package.shape = BodyShape::Round;
    package.bodyLengthMm = 6.4;
    package.bodyWidthMm = 6.4;
    package.heightMm = 12;
    package.defaultSpan = 3;
    return package;
}

}  // namespace tiepoint
