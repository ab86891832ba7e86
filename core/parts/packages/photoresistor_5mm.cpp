// A cadmium sulphide cell of 5 mm: a flat round wafer, 5.1 x 4.3 mm and 2 mm thick, that stands clear on two stiff wires (makers' drawings, from memory).

#include "core/parts/packages/packages.h"

namespace tiepoint {

Package photoresistor5mmPackage() {
    Package package;
    package.name = "photoresistor-5mm";
    package.reach = Reach::Bending;
    package.minSpan = 1;
    package.maxSpan = 6;
    package.shape = BodyShape::Round;
    package.bodyLengthMm = 5.1;
    package.bodyWidthMm = 5.1;
    package.heightMm = 5;
    package.defaultSpan = 2;
    return package;
}

}  // namespace tiepoint
