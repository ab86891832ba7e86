#pragma once
// What a hand and the world do to a bench at one instant; never saved.

#include <cstdint>
#include <set>
#include <string>

namespace tiepoint {

struct Inputs {
    std::uint64_t sequence = 0;               ///< counts changes, so that a view knows which press an answer belongs to
    std::set<std::string, std::less<>> held;  ///< ids of the parts that are pressed
    double timeScale = 1;
};

}  // namespace tiepoint
