#pragma once
// Benches for the tests of slips: those of the harbour that are sound, a few more with what those lack, and the sound benches of the
// findings' tests.

#include "core/bench/bench_file.h"
#include "core/slips/slip.h"
#include "support/compact_bench.h"
#include "support/sound_benches.h"

#include <memory>
#include <string>
#include <vector>

namespace tiepoint::test {

struct NamedBench {
    std::string name;
    Bench bench;
};

inline std::vector<NamedBench> harbourBenches() {
    std::vector<NamedBench> benches;
    for (const char* name : {"beacon-lamp", "dusk-light", "fairway-dimmer", "ferry-cabin", "gangway", "lock-gate",
                             "quay-bell-lamp", "three-buoys", "two-way-stair-lamp"}) {
        auto read = readBenchFile(std::string(TIEPOINT_SOURCE_DIR "/resources/benches/") + name + ".bench.json");
        benches.push_back({name, std::move(read).value().bench});
    }
    // Cells, sockets, a meter, tied rails, a button on one side of the gap, and neighbouring legs.
    for (const auto& [name, text] :
         {std::pair{"tide gauge on cells",
                    "half; CE1 top+3 bottom-3 3; M1 b14 j14 volts; R1 c8 c14 150; D1 e14 f14 red; W1 top+7 a8 red; "
                    "W2 i14 bottom-13 black"},
          std::pair{"quay lamp on a USB supply",
                    "half; US1; R1 c8 c14 270; D1 e14 f14 green; W1 US1.5V a8 red; W2 j14 US1.GND1 black"},
          std::pair{"mole lights at both edges",
                    "half; PS1 top+3 top-3 5; R1 h8 h14 330; D1 g14 g17 red; W1 top+1 bottom+1 red; W2 top-2 "
                    "bottom-2 black; W3 bottom+7 j8 red; W4 j17 bottom-15 black"},
          std::pair{"ferry bells with buttons on one side",
                    "half; PS1 top+3 bottom-3 5; R1 a4 a8 330; S1 b8; S2 b13; D1 c15 c18 red; W1 top+4 b4 red; W2 "
                    "a10 a13 yellow; W3 a18 top-16 black; W4 top-1 bottom-1 black"},
          std::pair{"two beacons close together",
                    "half; PS1 top+3 bottom-3 5; R1 c5 c10 330; D1 e10 f10 red; R2 b12 b17 330; D2 e12 e15 green; "
                    "W1 top+5 a5 red; W2 j10 bottom-9 black; W3 top+14 a17 red; W4 a15 top-13 black; W5 top-1 "
                    "bottom-1 black"}}) {
        benches.push_back({name, compactBench(text)});
    }
    return benches;
}

inline std::vector<NamedBench> allSoundBenches() {
    std::vector<NamedBench> benches = harbourBenches();
    for (const SoundBench& sound : soundBenches())
        benches.push_back({std::string(sound.name), compactBench(sound.text)});
    return benches;
}

inline std::shared_ptr<const Layout> laidOut(const Bench& bench) {
    return buildLayout(std::make_shared<const Bench>(bench));
}
inline std::uint64_t digestOfCircuit(const Bench& bench) { return CircuitDigest(*laidOut(bench)).now(); }

}  // namespace tiepoint::test
