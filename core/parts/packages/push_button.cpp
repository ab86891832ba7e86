// The four-legged tactile switch. Joined legs face each other across the body, three pitches apart.

#include "core/parts/packages/packages.h"

namespace tiepoint {

Package pushButtonPackage() {
    Package package;
    package.name = "push-button";
    package.reach = Reach::Rigid;
    package.footprint = {{0, 0}, {0, 3}, {2, 0}, {2, 3}};
    package.bodyLengthMm = 6.1;
    package.bodyWidthMm = 6.1;
    return package;
}

}  // namespace tiepoint
