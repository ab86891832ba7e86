// Benches for one part of the catalogue: it stands behind a supply and a resistor and is read by the names of its leads.
#pragma once

#include "core/snapshot/readings.h"
#include "support/build_bench.h"

#include <string_view>

namespace tiepoint::test {

inline double leadAmpere(const Snapshot& s, std::string_view part, std::string_view lead) {
    const int index = s.layout->bench->partIndex(part);
    return s.leadCurrent[s.layout->leadIndex(index, s.layout->bench->parts[index].kind->leadIndex(lead))];
}
inline double leadVolt(const Snapshot& s, std::string_view part, std::string_view lead) {
    const int index = s.layout->bench->partIndex(part);
    return s.leadVoltage(s.layout->leadIndex(index, s.layout->bench->parts[index].kind->leadIndex(lead)));
}

/// A supply of so many volts from column 10 to column 20, through a resistor.
inline BenchBuilder driven(double volt, double ohm) {
    BenchBuilder builder;
    builder.board("A", "half")
        .part("PS1", "bench-supply", {{"+", "A.a5"}, {"-", "A.a20"}},
              {{"voltage", volt}, {"seriesResistance", 0}, {"currentLimit", 30}})
        .part("R1", "resistor", {{"1", "A.b5"}, {"2", "A.b10"}}, {{"resistance", ohm}});
    return builder;
}

}  // namespace tiepoint::test
