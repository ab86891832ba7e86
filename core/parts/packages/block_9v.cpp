// The nine-volt block, 26.5 x 48.5 mm, with a clip on its upper end; both leads leave the clip.

#include "core/parts/packages/packages.h"

namespace tiepoint {

Package block9VPackage() {
    Package package;
    package.name = "block-9v";
    package.reach = Reach::Flying;
    package.footprint = {{26.5, 3}, {26.5, 7}};
    package.bodyLengthMm = 26.5;
    package.bodyWidthMm = 48.5;
    return package;
}

}  // namespace tiepoint
