// A small potentiometer: three legs in line, two pitches apart; its knob stands 15 mm high (from memory).

#include "core/parts/packages/packages.h"

namespace tiepoint {

Package potentiometerPackage() {
    Package package;
    package.name = "potentiometer";
    package.reach = Reach::Rigid;
    package.footprint = {{0, 0}, {2, 0}, {4, 0}};
    package.bodyLengthMm = 12.8;
    package.bodyWidthMm = 9.5;
    package.heightMm = 15;
    return package;
}

}  // namespace tiepoint
