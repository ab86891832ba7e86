// A small box on a USB lead, with three sockets one above the other along its right edge.

#include "core/parts/packages/packages.h"

namespace tiepoint {

Package usbSupplyPackage() {
    Package package;
    package.name = "usb-supply";
    package.reach = Reach::Flying;
    package.footprint = {{20, 9}, {20, 18}, {20, 27}};
    package.bodyLengthMm = 26;
    package.bodyWidthMm = 36;
    return package;
}

}  // namespace tiepoint
