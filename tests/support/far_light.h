#pragma once
// The far light of the harbour: a beacon at the end of the mole, switched by a button.

#include "support/build_bench.h"

namespace tiepoint::test {

inline Bench farLight() {
    BenchBuilder builder;
    builder.board("A", "half")
        .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}}, {{"voltage", 5}})
        .part("R1", "resistor", {{"1", "A.c8"}, {"2", "A.c14"}}, {{"resistance", 330}})
        .part("S1", "push-button", {{"1a", "A.e14"}, {"1b", "A.f14"}, {"2a", "A.e16"}, {"2b", "A.f16"}})
        .part("D1", "led", {{"anode", "A.h22"}, {"cathode", "A.h25"}}, {{"colour", "red"}})
        .jumper("A.top+7", "A.a8")
        .jumper("A.i16", "A.i22")
        .jumper("A.j25", "A.bottom-21");
    Bench bench = builder.build();
    bench.title = "Far light";
    return bench;
}

}  // namespace tiepoint::test
