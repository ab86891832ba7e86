// A round 5 mm LED with three chips and four legs in line: red, common, green, blue; the common one is the longest (makers' drawings, from
// memory). Its legs bend to neighbouring holes.

#include "core/parts/packages/packages.h"

namespace tiepoint {

Package rgbLed5mmPackage() {
    Package package;
    package.name = "rgb-led-5mm";
    package.reach = Reach::Rigid;
    package.footprint = {{0, 0}, {2, 0}, {3, 0}, {1, 0}};
    package.shape = BodyShape::Round;
    package.bodyLengthMm = 5.8;
    package.bodyWidthMm = 5.8;
    package.heightMm = 8.6;
    return package;
}

}  // namespace tiepoint
