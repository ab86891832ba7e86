// A quarter-watt resistor: 6.3 x 2.3 mm on the data sheets of carbon-film makers, drawn with its paint at 6.5
// x 2.5; it lies a millimetre over the board (from memory).

#include "core/parts/packages/packages.h"

namespace tiepoint {

Package axialQuarterWattPackage() {
    Package package;
    package.name = "axial-quarter-watt";
    package.reach = Reach::Bending;
    package.minSpan = 4;
    package.maxSpan = 17;
    package.standingMaxSpan = 3;
    package.bodyLengthMm = 6.5;
    package.bodyWidthMm = 2.5;
    package.heightMm = 3.5;
    package.raised = true;
    package.defaultSpan = 5;
    return package;
}

}  // namespace tiepoint
