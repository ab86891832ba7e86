// The table of kinds, the most frequent first. A kind is one file of core/slips/kinds and one line here.

#include "core/slips/kinds/kinds.h"

#include <algorithm>
#include <array>

namespace tiepoint {
namespace {

constexpr std::array kSlipKinds = {
    &kOneHoleOff,    &kReversed,      &kJumperMissing, &kRailsApart,    &kOtherRail,   &kAcrossGap,
    &kSupplyOff,     &kRowForRail,    &kShifted,       &kSameColumn,    &kRailHalves,  &kValueTenfold,
    &kTwoHolesOff,   &kButtonTurned,  &kLookAlikeBand, &kMeterDial,     &kFarRail,     &kDryContact,
    &kWrongEnd,      &kButtonBridged, &kOuterPins,     &kLookAlikeType, &kWeakCells,   &kWrongVolts,
    &kLegsExchanged, &kSmallLimit,    &kDeadPart,      &kBrokenJumper,  &kWrongSocket, &kJumperExtra,
};

}  // namespace

std::span<const SlipKind* const> slipKinds() { return kSlipKinds; }

const SlipKind* findSlipKind(std::string_view name) {
    const auto found = std::ranges::find(kSlipKinds, name, &SlipKind::name);
    return found == kSlipKinds.end() ? nullptr : *found;
}

}  // namespace tiepoint
