#pragma once
// A function of a few switches, row by row, as a truth table lists it: the first variable is the leftmost column and changes slowest.
// Plain values.

#include <cstddef>
#include <cstdint>
#include <vector>

namespace tiepoint {

enum class Truth : std::uint8_t {
    No,
    Yes,
    Free,  ///< the row says nothing: either answer will do
};

struct TruthFunction {
    int variables = 0;
    std::vector<Truth> rows;  ///< 2^variables

    explicit TruthFunction(int count = 0, Truth everywhere = Truth::No)
        : variables(count),
          rows(std::size_t{1} << count, everywhere) {}

    unsigned bit(int variable) const { return 1u << (variables - 1 - variable); }
    bool isSet(std::size_t row, int variable) const { return (row & bit(variable)) != 0; }

    friend bool operator==(const TruthFunction&, const TruthFunction&) = default;
    friend auto operator<=>(const TruthFunction&, const TruthFunction&) = default;
};

/// Yes and no exchanged.
TruthFunction opposite(TruthFunction function);

}  // namespace tiepoint
