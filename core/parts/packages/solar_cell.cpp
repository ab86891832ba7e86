// A small solar cell on the table, 46 x 26 mm: a wafer under resin, as garden lights have it. Its two wires leave at the right.

#include "core/parts/packages/packages.h"

namespace tiepoint {

Package solarCellPackage() {
    Package package;
    package.name = "solar-cell";
    package.reach = Reach::Flying;
    package.footprint = {{46, 9}, {46, 17}};
    package.bodyLengthMm = 46;
    package.bodyWidthMm = 26;
    return package;
}

}  // namespace tiepoint
