// A small-signal diode in glass: about 4 x 2 mm (from memory).

#include "core/parts/packages/packages.h"

namespace tiepoint {

Package axialDiodePackage() {
    Package package;
    package.name = "diode-axial";
    package.reach = Reach::Bending;
    package.minSpan = 3;
    package.maxSpan = 16;
    package.standingMaxSpan = 2;
    package.bodyLengthMm = 4;
    package.bodyWidthMm = 2;
    package.defaultSpan = 4;
    return package;
}

}  // namespace tiepoint
