// A thermistor: a drop of lacquer of 3.8 mm about a small disc, on two thin wires (makers' drawings, from memory).

#include "core/parts/packages/packages.h"

namespace tiepoint {

Package thermistorBeadPackage() {
    Package package;
    package.name = "thermistor-bead";
    package.reach = Reach::Bending;
    package.minSpan = 1;
    package.maxSpan = 6;
    package.shape = BodyShape::Round;
    package.bodyLengthMm = 3.8;
    package.bodyWidthMm = 3.8;
    package.heightMm = 6;
    package.defaultSpan = 2;
    return package;
}

}  // namespace tiepoint
