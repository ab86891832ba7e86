#pragma once
// Digests of what a circuit is made of: the same on every machine and in every run, since they may stand in files. Pure functions.

#include <cstdint>
#include <string_view>

namespace tiepoint {

/// Mixes a number into a digest. Order counts.
std::uint64_t mixed(std::uint64_t digest, std::uint64_t number);
std::uint64_t digestOf(std::string_view text);
/// Of a figure to twelve digits: what differs by rounding alone is the same.
std::uint64_t digestOf(double figure);

}  // namespace tiepoint
