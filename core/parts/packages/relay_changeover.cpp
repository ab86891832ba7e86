// A small relay with a changeover contact, on a grid of 2.54 mm with rows 7.62 mm apart, so that it stands astride the gap: the coil's legs at
// one end, the contact's at the other with common between them. Case 17.8 x 10.2 mm, 11 mm high (small signal relays, from memory).

#include "core/parts/packages/packages.h"

namespace tiepoint {

Package relayChangeoverPackage() {
    Package package;
    package.name = "relay-changeover";
    package.reach = Reach::Rigid;
    package.footprint = {{0, 0}, {0, -3}, {3, 0}, {5, 0}, {5, -3}};
    package.bodyLengthMm = 17.8;
    package.bodyWidthMm = 10.2;
    package.heightMm = 11;
    return package;
}

}  // namespace tiepoint
