// The four-legged tactile switch. Joined legs face each other across the body, three pitches apart. Its cap stands 5 mm over the board
// (the commonest height on data sheets, from memory).

#include "core/parts/packages/packages.h"

namespace tiepoint {

Package pushButtonPackage() {
    Package package;
    package.name = "push-button";
    package.reach = Reach::Rigid;
    package.footprint = {{0, 0}, {0, 3}, {2, 0}, {2, 3}};
    package.bodyLengthMm = 6.1;
    package.bodyWidthMm = 6.1;
    package.heightMm = 5;
    return package;
}

}  // namespace tiepoint
