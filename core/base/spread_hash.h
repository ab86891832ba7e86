#pragma once
// A number that follows from a text and a place alone and looks like chance (FNV-1a: Fowler, Noll and Vo). Pure; safe from any thread.

#include <cstdint>
#include <string_view>

namespace tiepoint {

/// Between -1 and 1.
inline double spreadHash(std::string_view text, int place) {
    std::uint64_t hash = 14695981039346656037ULL;
    const auto add = [&](unsigned char byte) { hash = (hash ^ byte) * 1099511628211ULL; };
    for (const char c : text) add(static_cast<unsigned char>(c));
    for (int rest = place; rest >= 0; rest -= 256) add(static_cast<unsigned char>(rest & 255));
    hash ^= hash >> 29;
    return static_cast<double>(hash >> 11) / static_cast<double>(1ULL << 53) * 2 - 1;
}

}  // namespace tiepoint
