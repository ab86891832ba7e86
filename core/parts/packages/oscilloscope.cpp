// The oscilloscope: a box that lies at the right of the boards, its three sockets at its edge towards them.

#include "core/parts/packages/packages.h"

namespace tiepoint {

Package oscilloscopePackage() {
    Package package;
    package.name = "oscilloscope";
    package.reach = Reach::Flying;
    package.rightOfBoards = true;
    package.footprint = {{6.6, 11.5}, {6.6, 26}, {6.6, 40.5}};
    package.bodyLengthMm = 80;
    package.bodyWidthMm = 58;
    return package;
}

}  // namespace tiepoint
