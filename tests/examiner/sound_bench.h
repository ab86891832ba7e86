#pragma once
// Sound benches from a seed: built as hands build them, every part within its ratings in every position (LEDs within their usual current, too), every light bright where it is
// meant to shine, every switch with an effect. Drawn by construction, tried, and drawn again where one doesn't hold.

#include "examiner/behaviour.h"

#include <cstdint>
#include <optional>

namespace tiepoint::examiner {

struct SoundBench {
    Bench bench;
    std::set<std::string> parked;  ///< ids of parts that wait on the board
    int draws = 1;                 ///< how many were drawn until this one held
};

/// The brightness that each light reaches in the position meant for it.
inline constexpr double kBrightEnough = 0.6;

/// Why a bench isn't sound, in a few words; empty if it is.
std::string whyNotSound(const Bench& bench, const std::set<std::string>& parked);

/// The same seed gives the same bench. `parts`: about how many; nothing: by chance, 1 to 25, a few of 60 and more.
SoundBench soundBench(std::uint64_t seed, std::optional<int> parts = {});

}  // namespace tiepoint::examiner
