// A rectifier diode in black plastic, DO-41 (JEDEC DO-204, from memory): 5.2 x 2.7 mm; it lies a millimetre over the board.

#include "core/parts/packages/packages.h"

namespace tiepoint {

Package do41DiodePackage() {
    Package package;
    package.name = "diode-do-41";
    package.reach = Reach::Bending;
    package.minSpan = 4;
    package.maxSpan = 16;
    package.bodyLengthMm = 5.2;
    package.bodyWidthMm = 2.7;
    package.heightMm = 3.7;
    package.defaultSpan = 4;
    package.standingMaxSpan = 2;
    package.raised = true;
    return package;
}

}  // namespace tiepoint
