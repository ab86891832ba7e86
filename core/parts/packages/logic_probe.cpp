// The logic probe: a slim box that lies at the right of the boards; its tip and its two clips leave at its edge towards them.

#include "core/parts/packages/packages.h"

namespace tiepoint {

Package logicProbePackage() {
    Package package;
    package.name = "logic-probe";
    package.reach = Reach::Flying;
    package.rightOfBoards = true;
    package.footprint = {{4.5, 12}, {4.5, 19}, {4.5, 26}};
    package.bodyLengthMm = 44;
    package.bodyWidthMm = 32;
    return package;
}

}  // namespace tiepoint
