// A small-signal diode in glass: about 4 x 2 mm; it lies a millimetre over the board (from memory).

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
    package.heightMm = 3;
    package.raised = true;
    package.defaultSpan = 4;
    return package;
}

}  // namespace tiepoint
