#pragma once
// Observations: what somebody sees, measures or hears at a real board that was to be built from a plan. Plain values; they name things and
// holes of the plan.
//
// As text (one word of the command line, one line of a kept case):
//
//   D1=dark | dim | lit | always lit | hot      a light in the present position; always lit: in every position. Hot: too hot, or it smells
//   A.c14=5.0                                   volts in the strip of a hole against the black tip
//   A.c14=glows | dark                          a probe light, an LED and 1 kilohm, between the hole and the black tip
//   A.c14~A.c20=beeps | silent                  continuity, with every supply off
//   A.c14~A.c20=jumper | no jumper              whether one lies there that the plan doesn't have
//   R1=as planned | not as planned              somebody looked at the thing, or (by a board's id) at all that stands on the board
//   D1.anode=A.c15, W1.2=A.c9                   where a leg or an end (1, 2) stands
//   R1.resistance=3.3k, PS1.on=0                what a value or a state is, as its bands, its knob or its print say
//   W1=missing
//
// Pure functions; safe from any thread.

#include "core/base/result.h"
#include "core/bench/bench.h"
#include "core/snapshot/throws.h"

#include <optional>
#include <string>
#include <string_view>
#include <variant>

namespace tiepoint {

/// How bright a light looks: dark under 4.5 %, dim under 45 % (core/snapshot/lit.h, and common practice).
enum class Shine { Dark, Dim, Lit };
inline constexpr double kDimBrightness = 0.45;

struct SawLight {
    std::string part;
    Shine shine = Shine::Dark;
    bool always = false;  ///< shines in every position of the switches, however brightly
    friend bool operator==(const SawLight&, const SawLight&) = default;
};
struct SawVolts {
    Hole red;
    double volt = 0;
    friend bool operator==(const SawVolts&, const SawVolts&) = default;
};
struct SawGlow {
    Hole red;
    bool glows = false;
    friend bool operator==(const SawGlow&, const SawGlow&) = default;
};
struct HeardBeep {
    Hole one, other;
    bool beeps = false;
    friend bool operator==(const HeardBeep&, const HeardBeep&) = default;
};
struct SawExtra {
    Hole one, other;
    bool jumper = false;
    friend bool operator==(const SawExtra&, const SawExtra&) = default;
};
struct SawBuilt {
    std::string id;  ///< of a part, a jumper or a board
    bool asPlanned = true;
    friend bool operator==(const SawBuilt&, const SawBuilt&) = default;
};
struct SawTip {
    std::string id;
    int tip = 0;  ///< the part's lead or the jumper's end
    Hole in;
    friend bool operator==(const SawTip&, const SawTip&) = default;
};
struct SawSetting {
    std::string part;
    bool state = false;
    int index = 0;  ///< of the kind's value or state
    double value = 0;
    friend bool operator==(const SawSetting&, const SawSetting&) = default;
};
struct SawMissing {
    std::string jumper;
    friend bool operator==(const SawMissing&, const SawMissing&) = default;
};
struct SawHot {
    std::string part;
    friend bool operator==(const SawHot&, const SawHot&) = default;
};

struct Observation {
    Digits digits;  ///< by throwsOf(plan): how the switches stood
    std::variant<SawLight, SawVolts, SawGlow, HeardBeep, SawExtra, SawBuilt, SawTip, SawSetting, SawMissing, SawHot>
        what;
    std::optional<Hole> black;  ///< where the black tip stood; nothing: in the minus of the first supply

    friend bool operator==(const Observation&, const Observation&) = default;
};

/// Reads one observation. The digits are taken as they are given.
Result<Observation> readObservation(const Bench& plan, std::string_view text, Digits digits,
                                    std::optional<Hole> black = {});
/// As readObservation reads it, without position and black tip.
std::string writeObservation(const Bench& plan, const Observation& observation);

/// The switches as they stand in the plan, nothing pressed.
Digits restOf(const Bench& plan);
/// What has to be held or set for a position, seen from the plan: {"S1", "S2=b"}; empty at rest.
std::vector<std::string> holdsOf(const Bench& plan, const Digits& digits);
/// A position from such words; "none" is rest. Fails where a word names nothing that can be held or set so.
Result<Digits> readHolds(const Bench& plan, const std::vector<std::string>& holds);
/// "while S1 is pressed", "with S2 towards b"; empty at rest.
std::string positionInWords(const Bench& plan, const Digits& digits);

/// The hole of the black tip where nothing else is said: that of the minus of the first supply in natural order of ids that is plugged in,
/// or of a jumper in its socket.
std::optional<Hole> usualBlackTip(const Bench& plan);

}  // namespace tiepoint
