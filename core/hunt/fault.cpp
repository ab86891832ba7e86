#include "core/hunt/fault.h"

#include "core/meter/meter.h"
#include "core/slips/kinds/kinds.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <utility>

namespace tiepoint {
namespace {

constexpr std::array kFaults = {
    Fault{"broken-inside", "broken inside", "is broken inside."},
    Fault{"no-contact", "no contact", "makes no contact in a hole."},
    Fault{"wrong-hole", "in a wrong hole", "has a leg in a wrong hole."},
    Fault{"turned-round", "turned round", "is turned round."},
    Fault{"wrong-value", "wrong value", "has a wrong value."},
    Fault{"wrongly-set", "set wrongly", "is set wrongly."},
};
constexpr const Fault *kBroken = &kFaults[0], *kNoContact = &kFaults[1], *kMisplaced = &kFaults[2],
                      *kTurned = &kFaults[3], *kValue = &kFaults[4], *kSetting = &kFaults[5];

using Row = std::pair<const SlipKind*, const Fault*>;
/// Kinds that aren't here have no single thing to blame.
constexpr std::array kRows = {
    Row{&kOneHoleOff, kMisplaced},    Row{&kTwoHolesOff, kMisplaced}, Row{&kAcrossGap, kMisplaced},
    Row{&kRowForRail, kMisplaced},    Row{&kOtherRail, kMisplaced},   Row{&kFarRail, kMisplaced},
    Row{&kShifted, kMisplaced},       Row{&kSameColumn, kMisplaced},  Row{&kWrongEnd, kMisplaced},
    Row{&kButtonBridged, kMisplaced}, Row{&kWrongSocket, kMisplaced}, Row{&kLegsExchanged, kMisplaced},
    Row{&kOuterPins, kMisplaced},     Row{&kReversed, kTurned},       Row{&kButtonTurned, kTurned},
    Row{&kValueTenfold, kValue},      Row{&kLookAlikeBand, kValue},   Row{&kLookAlikeType, kValue},
    Row{&kWeakCells, kSetting},       Row{&kWrongVolts, kSetting},    Row{&kSmallLimit, kSetting},
    Row{&kSupplyOff, kSetting},       Row{&kDeadPart, kBroken},       Row{&kBrokenJumper, kBroken},
    Row{&kDryContact, kNoContact},
};

}  // namespace

std::span<const Fault> faults() { return kFaults; }

const Fault* findFault(std::string_view name) {
    const auto found = std::ranges::find(kFaults, name, &Fault::name);
    return found == kFaults.end() ? nullptr : &*found;
}

const Fault* faultOf(const SlipKind& kind) {
    const auto found = std::ranges::find(kRows, &kind, &Row::first);
    return found == kRows.end() ? nullptr : found->second;
}

bool isUnseen(const Fault& fault) { return &fault == kBroken || &fault == kNoContact; }

std::string causeInWords(std::string_view thing, const Fault& fault) {
    return fmt::format("{} {}", thing, fault.clause);
}

std::vector<std::string> thingsToBlame(const Bench& bench, const Slip& slip) {
    std::vector<std::string> things = idsOf(slip.wrong);
    std::erase_if(things, [&](const std::string& id) {
        const Part* part = bench.findPart(id);
        return part ? isMeter(*part->kind) : bench.findJumper(id) == nullptr;
    });
    return things;
}

}  // namespace tiepoint
