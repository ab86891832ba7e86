#include "core/netlist/digest.h"

#include <cmath>

namespace tiepoint {

std::uint64_t mixed(std::uint64_t digest, std::uint64_t number) {
    // The finisher of SplitMix64 (Steele, Lea and Flood, "Fast splittable pseudorandom number generators", OOPSLA 2014; the constants from
    // memory). Any good finisher would do.
    std::uint64_t z = (digest ^ (number * 0xD6E8FEB86659FD93u)) + 0x9E3779B97F4A7C15u;
    z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9u;
    z = (z ^ (z >> 27)) * 0x94D049BB133111EBu;
    return z ^ (z >> 31);
}

std::uint64_t digestOf(std::string_view text) {
    std::uint64_t digest = mixed(0x7469, text.size());
    for (const char c : text) digest = mixed(digest, static_cast<unsigned char>(c));
    return digest;
}

std::uint64_t digestOf(double figure) {
    constexpr int kBits = 40;             // twelve digits
    if (figure == 0) return mixed(0, 0);  // no minus before it
    int exponent = 0;
    const double mantissa = std::round(std::ldexp(std::frexp(figure, &exponent), kBits));
    const bool carried = std::abs(mantissa) == std::ldexp(1.0, kBits);
    const double kept = carried ? mantissa / 2 : mantissa;
    return mixed(mixed(1, static_cast<std::uint64_t>(exponent + (carried ? 1 : 0))),
                 static_cast<std::uint64_t>(static_cast<std::int64_t>(kept)));
}

}  // namespace tiepoint
