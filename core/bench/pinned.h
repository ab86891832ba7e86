#pragma once
// Pinned readings: figures that stay beside what they measure. Part of the document; they touch nothing electrical and take no hole.
// One whose hole, part or jumper goes, goes with it (see core/edit).

#include "core/bench/extras.h"
#include "core/board/hole.h"

#include <string>
#include <string_view>
#include <variant>

namespace tiepoint {

/// Volts at a hole above the reference, the minus of a supply.
struct VoltsAt {
    Hole hole;
    friend bool operator==(const VoltsAt&, const VoltsAt&) = default;
};
/// Volts of the first hole above the second.
struct VoltsBetween {
    Hole first, second;
    friend bool operator==(const VoltsBetween&, const VoltsBetween&) = default;
};
/// Amperes in a jumper, from its first end to its second, or into a part through one of its leads.
struct AmperesIn {
    std::string id;    ///< of the jumper or part
    std::string lead;  ///< by name; empty for a jumper
    friend bool operator==(const AmperesIn&, const AmperesIn&) = default;
};
/// Watts that a part takes.
struct WattsOf {
    std::string part;
    friend bool operator==(const WattsOf&, const WattsOf&) = default;
};

using Measurand = std::variant<VoltsAt, VoltsBetween, AmperesIn, WattsOf>;

struct PinnedReading {
    std::string id;
    Measurand of;
    Extras extras;
    friend bool operator==(const PinnedReading&, const PinnedReading&) = default;
};

/// The member of a file that names what is measured: "volts", "amperes" or "watts".
std::string_view quantityOf(const Measurand& measurand);
/// The id of the part or jumper that is measured; empty for volts, which belong to holes.
std::string_view thingOf(const Measurand& measurand);

}  // namespace tiepoint
