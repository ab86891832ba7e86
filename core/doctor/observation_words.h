#pragma once
// What observations have in common with what foresees them: words for tips, and the supply that everything is measured against. Pure.

#include "core/doctor/observation.h"

namespace tiepoint {

/// The lead against which volts are measured where nothing else is said.
struct SupplyMinus {
    int part = 0, lead = 0;
};
/// Of the first supply in natural order of ids whose minus is plugged in or a socket.
std::optional<SupplyMinus> minusOfFirstSupply(const Bench& plan);

/// "anode" or "2": how a tip is called in an observation.
std::string tipName(const Bench& plan, const std::string& id, int tip);
/// "D1's anode", "end 2 of W1".
std::string tipInWords(const Bench& plan, const std::string& id, int tip);

/// "dark", "dim", "lit".
std::string_view shineName(Shine shine);

/// The observation as a clause: "D1 is dark with S1 pressed", "5 V at c14", "no beep from c14 to c20".
std::string observationInWords(const Bench& plan, const Observation& observation);

}  // namespace tiepoint
