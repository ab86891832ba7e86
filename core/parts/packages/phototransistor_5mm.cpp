// A phototransistor in the body of a round 5 mm LED, 8.6 mm high (makers' drawings, from memory).

#include "core/parts/packages/packages.h"

namespace tiepoint {

Package phototransistor5mmPackage() {
    Package package;
    package.name = "phototransistor-5mm";
    package.reach = Reach::Bending;
    package.minSpan = 1;
    package.maxSpan = 6;
    package.shape = BodyShape::Round;
    package.bodyLengthMm = 5.8;
    package.bodyWidthMm = 5.8;
    package.heightMm = 8.6;
    package.defaultSpan = 1;
    package.towardSecondMm = 1;  // the longer leg is the first
    return package;
}

}  // namespace tiepoint
