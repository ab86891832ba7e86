#pragma once
// What of a bench sounds at one instant, and how high. Pure; safe from any thread.

#include "core/snapshot/snapshot.h"

#include <vector>

namespace tiepoint {

/// What people hear (common practice).
inline constexpr double kLowestHertz = 20, kHighestHertz = 20e3;

struct Sound {
    int part = 0;
    double hertz = 0;
    friend bool operator==(const Sound&, const Sound&) = default;
};

/// The pitch of a part; 0 where it is silent, and of parts that never sound.
double pitchOf(const Snapshot& snapshot, int part);
/// All that is heard, by part.
std::vector<Sound> soundsOf(const Snapshot& snapshot);

}  // namespace tiepoint
