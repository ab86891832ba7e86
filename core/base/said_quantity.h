#pragma once
// Quantities among typed words, as people write and say them: "47 ohm", "47R", "4k7", "47 kilohm", "100 mA", "5 V", "1/4 W", "1 %".
// Pure functions.

#include <string>
#include <string_view>
#include <vector>

namespace tiepoint {

struct SaidQuantity {
    double value = 0;
    std::string unit;        ///< as in core/base/unit.h, "%", or "" where none was said; a share of 1 % is 0.01
    std::string text;        ///< as typed, without blanks around it
    bool ambiguous = false;  ///< "1,000": a thousand, or one
};

struct SaidWords {
    std::vector<SaidQuantity> quantities;
    std::vector<std::string> words;  ///< what is no quantity, as typed
};

/// Parts a text into quantities and words. A number may be followed by a prefix and a unit, as signs or in words, with or without blanks;
/// the last word may be unfinished while somebody is typing ("47 oh") as long as it can only become one thing. A letter may stand for
/// the point (IEC 60062: 4k7, 4R7, R47, 3V3). m is milli and M is mega; k and K are kilo. A number with letters that are no unit is a
/// word: "1N4148", "5mm".
SaidWords readSaid(std::string_view text);

}  // namespace tiepoint
