#pragma once
// What a pinned reading reads at one instant. Pure; safe from any thread.

#include "core/snapshot/snapshot.h"

#include <optional>
#include <string>
#include <string_view>

namespace tiepoint {

struct PinnedValue {
    double value = 0;       ///< SI; NaN where nothing is to be read: floating metal, no solution, every supply off
    std::string_view unit;  ///< "V", "A", "W"
};

/// Requires a reading of the snapshot's bench.
PinnedValue pinnedValue(const Snapshot& snapshot, const PinnedReading& reading);

/// A pinned reading that keeps a figure as it was read once has it in this member, as text: "1  5.00 V".
inline constexpr std::string_view kFrozenMember = "shown";
/// That text; nothing of a reading that is live.
std::optional<std::string> frozenText(const PinnedReading& reading);

/// As it is shown: "1.91 V", "9.36 mA", "gives 47 mW"; "floating", "off" or "no answer" where there is no figure. Amperes are shown
/// without the sign, which says only which way round the jumper was drawn: arrows show the way.
std::string pinnedText(const Snapshot& snapshot, const PinnedReading& reading);

}  // namespace tiepoint
