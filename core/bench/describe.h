#pragma once
// What a part is called in words: "D1, red LED", "R1, 330 Ω resistor". Made from the kind's table, so that a new kind needs nothing here.

#include "core/bench/bench.h"
#include "core/bench/table.h"

#include <string>

namespace tiepoint {

/// The kind with the setting that people name it by: the label of its first choice, else the first number of a preferred series.
std::string describeKind(const Part& part);
/// "D1, red LED".
std::string describePart(const Part& part);
/// One value or state in words with its unit: "330 Ω", "red", "yes".
std::string describeSetting(const ValueSpec& spec, double value);
/// What a pinned reading measures: "volts at e12", "volts of e12 above e14", "amperes in W1", "amperes in R1, lead 1", "watts of D1".
std::string measurandInWords(const Bench& bench, const Measurand& measurand);
/// A board in words: "Half board, 400 tie points".
std::string describeBoard(const Board& board);

/// "Cut 43 mm: 6 mm bare at each end."; from 10 cm on in centimetres.
std::string wireInWords(const Bench& bench, const Table& table, const Jumper& jumper);

}  // namespace tiepoint
