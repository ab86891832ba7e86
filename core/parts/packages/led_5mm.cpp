// A round 5 mm LED seen from above; its flange is the widest part of it, its dome 8.6 mm high (makers' drawings, from memory).

#include "core/parts/packages/packages.h"

namespace tiepoint {

Package led5mmPackage() {
    Package package;
    package.name = "led-5mm";
    package.reach = Reach::Bending;
    package.minSpan = 1;
    package.maxSpan = 6;
    package.shape = BodyShape::Round;
    package.bodyLengthMm = 5.8;
    package.bodyWidthMm = 5.8;
    package.heightMm = 8.6;
    package.towardSecondMm = 1;  // the anode's leg is the longer one, and shows it
    package.defaultSpan = 1;
    return package;
}

}  // namespace tiepoint
