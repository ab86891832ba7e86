#pragma once
// What the model of a kind says about exchanging its ends and about which of its values and states matter. Pure; asks the kind's data and
// never its name.

#include "core/netlist/likeness.h"
#include "core/parts/part_kind.h"

#include <string_view>

namespace tiepoint {

/// Whether an element of that name is the same with its two nodes exchanged: its current is an odd function of its voltage.
bool worksEitherWay(std::string_view element);
/// Whether the two nodes of an element may be exchanged in a part of that kind. Not where the part minds its polarity for a reason that no
/// current shows, such as a limit of reverse voltage, and not in an instrument, whose reading has a sign.
bool mayBeExchanged(const ElementSpec& spec, const PartKind& kind);
/// Whether a kind has two leads, nodes inside, and nothing that minds which way round: a motor, or a coil with a membrane. Exchanged it is
/// the same circuit, although its inside isn't laid out alike from both ends.
bool isOddTwoPole(const PartKind& kind);
/// Whether a parameter follows from something that a hand sets on the part: a state or a constant of its choice.
bool followsState(const Parameter& parameter, const PartKind& kind);
/// Whether the model or the brightness is reckoned with the value of that name.
bool isReckonedWith(std::string_view value, const PartKind& kind);
/// Whether a value of a kind counts.
bool valueCounts(const ValueSpec& spec, const PartKind& kind, const Likeness& likeness);
/// Whether a state shows in the model: it opens or closes an element, or a parameter follows it.
bool showsInModel(const ValueSpec& state, const PartKind& kind);

}  // namespace tiepoint
