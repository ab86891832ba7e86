#pragma once
// The text of a small bench file, and texts that differ from it in one place.

#include <string>
#include <string_view>

namespace tiepoint::test {

inline constexpr std::string_view kBeacon = R"({
  "format": "tiepoint-bench",
  "version": 1,
  "title": "Beacon lamp",
  "boards": [
    {"id": "A", "kind": "full", "at": [0, 0]}
  ],
  "parts": [
    {"id": "PS1", "kind": "bench-supply", "leads": {"+": "A.top+3", "-": "A.bottom-3"}, "values": {"voltage": 5, "currentLimit": 0.5}},
    {"id": "R1", "kind": "resistor", "leads": {"1": "A.c10", "2": "A.c14"}, "values": {"resistance": 220}},
    {"id": "S1", "kind": "push-button", "leads": {"1a": "A.e14", "1b": "A.f14", "2a": "A.e16", "2b": "A.f16"}, "cap": "A"},
    {"id": "D1", "kind": "led", "leads": {"anode": "A.g16", "cathode": "A.g17"}, "values": {"colour": "red"}}
  ],
  "jumpers": [
    {"id": "W1", "ends": ["A.top+8", "A.a10"], "colour": "red"},
    {"id": "W2", "ends": ["A.j17", "A.bottom-14"], "colour": "black"}
  ]
}
)";

/// The beacon with one piece of text in place of another; throws std::invalid_argument if that one isn't there.
std::string beaconWith(std::string_view from, std::string_view to);
/// A file with its head and these members only.
std::string minimal(std::string_view members);

}  // namespace tiepoint::test
