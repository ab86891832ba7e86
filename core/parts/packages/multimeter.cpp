// The multimeter: a handheld box that lies at the right of the boards; its two sockets are one above the other at its edge towards them.

#include "core/parts/packages/packages.h"

namespace tiepoint {

Package multimeterPackage() {
    Package package;
    package.name = "multimeter";
    package.reach = Reach::Flying;
    package.rightOfBoards = true;
    package.footprint = {{6.6, 41.6}, {6.6, 48}};
    package.bodyLengthMm = 34;
    package.bodyWidthMm = 54;
    return package;
}

}  // namespace tiepoint
