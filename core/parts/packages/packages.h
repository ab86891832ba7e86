#pragma once
// The packages, one file each. The table in core/parts/package.cpp lists them.

#include "core/parts/package.h"

namespace tiepoint {

Package benchSupplyPackage();
Package usbSupplyPackage();
Package cellsPackage();
Package block9VPackage();
Package axialQuarterWattPackage();
Package axialDiodePackage();
Package led5mmPackage();
Package pushButtonPackage();
Package slideSwitchPackage();
Package potentiometerPackage();
Package lampWiredPackage();
Package togglePackage();
Package multimeterPackage();

}  // namespace tiepoint
