// A small slide switch: three legs in line, one pitch apart; its slide stands 6.5 mm high (from memory).

#include "core/parts/packages/packages.h"

namespace tiepoint {

Package slideSwitchPackage() {
    Package package;
    package.name = "slide-switch";
    package.reach = Reach::Rigid;
    package.footprint = {{0, 0}, {1, 0}, {2, 0}};
    package.bodyLengthMm = 8.6;
    package.bodyWidthMm = 4;
    package.heightMm = 6.5;
    return package;
}

}  // namespace tiepoint
