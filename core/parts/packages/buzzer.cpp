// A buzzer: a round can of 12 mm, 9.5 mm high, on two legs 7.6 mm apart (the usual outline, from memory), which stand 3 pitches apart.

#include "core/parts/packages/packages.h"

namespace tiepoint {

Package buzzerPackage() {
    Package package;
    package.name = "buzzer";
    package.reach = Reach::Rigid;
    package.footprint = {{0, 0}, {3, 0}};
    package.shape = BodyShape::Round;
    package.bodyLengthMm = 12;
    package.bodyWidthMm = 12;
    package.heightMm = 9.5;
    return package;
}

}  // namespace tiepoint
