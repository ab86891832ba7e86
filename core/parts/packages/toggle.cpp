// A subminiature toggle switch: two legs in line, two pitches apart; its lever stands 13 mm high (from memory).

#include "core/parts/packages/packages.h"

namespace tiepoint {

Package togglePackage() {
    Package package;
    package.name = "toggle";
    package.reach = Reach::Rigid;
    package.footprint = {{0, 0}, {2, 0}};
    package.bodyLengthMm = 8.4;
    package.bodyWidthMm = 5.2;
    package.heightMm = 13;
    return package;
}

}  // namespace tiepoint
