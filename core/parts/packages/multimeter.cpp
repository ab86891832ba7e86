// The multimeter: a handheld box that lies at the right of the boards; its two sockets are at its lower end, and its leads leave
// downwards.

#include "core/parts/packages/packages.h"

namespace tiepoint {

Package multimeterPackage() {
    Package package;
    package.name = "multimeter";
    package.reach = Reach::Flying;
    package.rightOfBoards = true;
    package.footprint = {{24, 47.5}, {10, 47.5}};
    package.bodyLengthMm = 34;
    package.bodyWidthMm = 54;
    return package;
}

}  // namespace tiepoint
