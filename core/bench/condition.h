#pragma once
// The condition of parts and jumpers: what is broken in a thing that looks sound. Pure functions; safe from any thread.
//
// The laws:
//   dead, open inside   no element of the part is there, so nothing passes through it; legs that are one piece of metal stay joined.
//                       A jumper's two ends aren't joined: its wire has parted behind its first end.
//   dry contact         the first lead that is in a hole doesn't touch the clip there: it is joined to nothing, as if it hung free,
//                       while hole and strip stay as they are. Of a jumper it is the first end. A part with no lead in a hole
//                       (one with sockets only) is as a sound one.
// A meter finds each: across a broken part it shows the voltage that drives nothing, and it doesn't beep from end to end.

#include <array>
#include <string_view>

namespace tiepoint {

struct Bench;
struct Part;

enum class Condition { Sound, Dead, OpenInside, DryContact };

/// The words of a file, in the order of Condition.
inline constexpr std::array<std::string_view, 4> kConditionNames = {"sound", "dead", "open inside", "dry contact"};

/// Whether the elements of such a part are there.
constexpr bool hasElements(Condition condition) {
    return condition == Condition::Sound || condition == Condition::DryContact;
}

/// Index of the lead that doesn't touch its hole's clip, or -1.
int untouchedLead(const Part& part);
/// Whether everything on the bench is sound.
bool isSound(const Bench& bench);
/// The bench as it looks: with everything sound.
Bench soundOf(Bench bench);

}  // namespace tiepoint
