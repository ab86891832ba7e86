#pragma once
// The kinds of slip, one file each; slip_kinds.cpp has the table. Constant data.

#include "core/slips/slip.h"

namespace tiepoint {

extern const SlipKind kOneHoleOff, kTwoHolesOff, kAcrossGap, kRowForRail, kOtherRail, kFarRail, kShifted, kReversed,
    kSameColumn, kWrongEnd, kJumperMissing, kJumperExtra, kLegsExchanged, kValueTenfold, kLookAlikeBand, kButtonTurned,
    kButtonBridged, kOuterPins, kRailHalves, kRailsApart, kSupplyOff, kWeakCells, kWrongVolts, kSmallLimit, kMeterDial,
    kWrongSocket, kDeadPart, kBrokenJumper, kDryContact, kLookAlikeType;

}  // namespace tiepoint
