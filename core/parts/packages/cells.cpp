// A holder of round cells, of one size for every count; both leads leave its right edge.

#include "core/parts/packages/packages.h"

namespace tiepoint {

Package cellsPackage() {
    Package package;
    package.name = "cells";
    package.reach = Reach::Flying;
    package.footprint = {{32, 10}, {32, 48}};
    package.bodyLengthMm = 32;
    package.bodyWidthMm = 58;
    return package;
}

}  // namespace tiepoint
