// An axial choke: a lacquered barrel of 9.2 x 4 mm (EPCOS B78108S), its leads bent to 5 pitches or more.

#include "core/parts/packages/packages.h"

namespace tiepoint {

Package axialChokePackage() {
    Package package;
    package.name = "axial-choke";
    package.reach = Reach::Bending;
    package.minSpan = 5;
    package.maxSpan = 17;
    package.bodyLengthMm = 9.2;
    package.bodyWidthMm = 4;
    package.heightMm = 4;
    package.raised = true;
    package.defaultSpan = 6;
    return package;
}

}  // namespace tiepoint
