#pragma once
// The packages and families of packages, one file each. The tables in core/parts/package.cpp and package_family.cpp list them.

#include "core/parts/package_family.h"

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
Package axialChokePackage();
Package buzzerPackage();
Package motorCanPackage();
Package relayChangeoverPackage();
Package signalSourcePackage();
Package logicProbePackage();
Package do41DiodePackage();
Package photoresistor5mmPackage();
Package thermistorBeadPackage();
Package phototransistor5mmPackage();
Package rgbLed5mmPackage();
Package solarCellPackage();
Package oscilloscopePackage();

PackageFamily dipFamily();
PackageFamily to92Family();
PackageFamily radialCanFamily();
PackageFamily ceramicDiscFamily();

}  // namespace tiepoint
