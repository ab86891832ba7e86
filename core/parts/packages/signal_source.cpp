// The signal source: a box that lies at the right of the boards, its two sockets one above the other at its edge towards them.

#include "core/parts/packages/packages.h"

namespace tiepoint {

Package signalSourcePackage() {
    Package package;
    package.name = "signal-source";
    package.reach = Reach::Flying;
    package.rightOfBoards = true;
    package.footprint = {{6.6, 30}, {6.6, 40}};
    package.bodyLengthMm = 46;
    package.bodyWidthMm = 48;
    return package;
}

}  // namespace tiepoint
