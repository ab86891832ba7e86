// A small motor of size 130 with its two wires, standing on its end at the right of the boards: a can 20 mm across, flattened on two sides to
// 15 mm (from memory), its shaft up, with a small propeller of 34 mm on it.

#include "core/parts/packages/packages.h"

namespace tiepoint {

Package motorCanPackage() {
    Package package;
    package.name = "motor-can";
    package.reach = Reach::Flying;
    package.rightOfBoards = true;
    package.footprint = {{9.4, 17}, {9.4, 21}};
    package.bodyLengthMm = 38;
    package.bodyWidthMm = 38;
    return package;
}

}  // namespace tiepoint
