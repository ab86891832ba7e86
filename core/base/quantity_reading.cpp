// Reading what a person types for a value. A small reader, left to right:
//   sign  digits  [point digits]  [exponent]  [prefix or letter point [digits]]  [unit]
// The number is put together as text and converted once, so that "4k7" is exactly 4700.

#include "core/base/quantity.h"

#include <fmt/format.h>

#include <array>
#include <charconv>
#include <cmath>

namespace tiepoint {
namespace {

struct Spelling {
    std::string_view text;
    int exponent;
};
/// Prefixes as people type them: both forms of micro, a plain u, a capital K.
constexpr std::array kPrefixSpellings = {
    Spelling{"p", -12}, Spelling{"n", -9}, Spelling{"u", -6}, Spelling{"\u00b5", -6}, Spelling{"\u03bc", -6},
    Spelling{"m", -3},  Spelling{"k", 3},  Spelling{"K", 3},  Spelling{"M", 6},       Spelling{"G", 9}};

struct UnitSpelling {
    std::string_view unit;
    std::string_view text;
    bool point;        ///< may stand in place of the decimal point: 4R7, 3V3
    double added = 0;  ///< from the unit that is typed to the one that is meant
};
/// Longer spellings stand before shorter ones.
constexpr std::array kUnitSpellings = {
    UnitSpelling{"ohm", "ohms", false},
    UnitSpelling{"ohm", "ohm", false},
    UnitSpelling{"ohm", "Ohm", false},
    UnitSpelling{"ohm", "\u03a9", true},
    UnitSpelling{"ohm", "\u2126", true},
    UnitSpelling{"ohm", "R", true},
    UnitSpelling{"ohm", "r", true},
    UnitSpelling{"V", "V", true},
    UnitSpelling{"V", "v", true},
    UnitSpelling{"A/V2", "A/V\u00b2", false},
    UnitSpelling{"A/V2", "A/V2", false},
    UnitSpelling{"A", "A", true},
    UnitSpelling{"A", "a", true},
    UnitSpelling{"W", "W", true},
    UnitSpelling{"W", "w", true},
    UnitSpelling{"", "%", false},
    UnitSpelling{"F", "F", true},
    UnitSpelling{"F", "f", true},
    UnitSpelling{"H", "H", true},
    UnitSpelling{"H", "h", true},
    UnitSpelling{"s", "sec", false},
    UnitSpelling{"s", "s", true},
    UnitSpelling{"Hz", "Hz", false},
    UnitSpelling{"Hz", "hz", false},
    UnitSpelling{"Hz", "HZ", false},
    UnitSpelling{"lx", "lx", false},
    UnitSpelling{"lx", "lux", false},
    UnitSpelling{"K", "K", false},
    UnitSpelling{"K", "\u00b0C", false, kZeroCelsiusKelvin},
    UnitSpelling{"K", "C", false, kZeroCelsiusKelvin},
    UnitSpelling{"\u00b0C", "\u00b0C", false},
    UnitSpelling{"\u00b0C", "C", false},
    UnitSpelling{"\u00b0C", "K", false, -kZeroCelsiusKelvin},
};
constexpr int kPercentExponent = -2;

class Reader {
public:
    Reader(std::string_view text, std::string_view unit) : rest_(text), unit_(unit), written_(unitOf(unit)) {}

    std::optional<double> read() {
        skipSpaces();
        readSign();
        whole_ = readDigits();
        if (!readPoint()) return std::nullopt;
        if (!readExponent()) return std::nullopt;
        skipSpaces();
        readLetters();
        skipSpaces();
        if (!rest_.empty() || (whole_.empty() && fraction_.empty())) return std::nullopt;
        return convert();
    }

private:
    bool take(std::string_view text) {
        if (!rest_.starts_with(text)) return false;
        rest_.remove_prefix(text.size());
        return true;
    }

    void skipSpaces() {
        while (take(" ") || take("\t") || take("\u00a0")) {
        }
    }

    void readSign() {
        if (take("-") || take("\u2212")) {
            negative_ = true;
        } else {
            take("+");
        }
    }

    std::string readDigits() {
        const std::size_t end = std::min(rest_.find_first_not_of("0123456789"), rest_.size());
        std::string digits(rest_.substr(0, end));
        rest_.remove_prefix(end);
        return digits;
    }

    /// A comma before exactly three digits may part thousands as well: better no answer than a wrong one.
    bool readPoint() {
        const bool comma = rest_.starts_with(',');
        pointed_ = take(".") || take(",");
        if (!pointed_) return true;
        fraction_ = readDigits();
        const bool thousands = comma && fraction_.size() == 3 && whole_.find_first_not_of('0') != std::string::npos;
        return !fraction_.empty() && !thousands;
    }

    bool readExponent() {
        if (whole_.empty() && fraction_.empty()) return true;
        if (!take("e") && !take("E")) return true;
        const bool down = take("-") || take("\u2212");
        if (!down) take("+");
        const std::string digits = readDigits();
        constexpr std::size_t kMostDigits = 3;
        if (digits.empty() || digits.size() > kMostDigits) return false;
        exponent_ = (down ? -1 : 1) * std::stoi(digits);
        pointed_ = true;  // 1e3k7 is no number
        return true;
    }

    /// Prefix and unit; the first letter may stand for the decimal point.
    void readLetters() {
        if (readPrefix()) {
            readFractionAfterLetter();
            skipSpaces();
            readUnit();
        } else if (readUnit()) {
            readFractionAfterLetter();
        }
    }

    bool readPrefix() {
        // IEC 60062 puts the letter first only for capacitances: n33.
        if (unit_.empty() || (whole_.empty() && fraction_.empty() && unit_ != "F")) return false;
        for (const Spelling& prefix : kPrefixSpellings) {
            if (prefix.exponent < written_.least || prefix.exponent > written_.most || !take(prefix.text)) continue;
            exponent_ += prefix.exponent;
            letterIsPoint_ = true;
            return true;
        }
        return false;
    }

    bool readUnit() {
        for (const UnitSpelling& spelling : kUnitSpellings) {
            if (spelling.unit != unit_ || !take(spelling.text)) continue;
            letterIsPoint_ = spelling.point;
            if (spelling.unit.empty()) exponent_ += kPercentExponent;
            added_ = spelling.added;
            return true;
        }
        return false;
    }

    void readFractionAfterLetter() {
        if (letterIsPoint_ && !pointed_) fraction_ = readDigits();
    }

    std::optional<double> convert() const {
        const std::string text = fmt::format("{}{}.{}e{}", negative_ ? "-" : "", whole_.empty() ? "0" : whole_,
                                             fraction_.empty() ? "0" : fraction_, exponent_);
        double value = 0;
        const auto end = std::from_chars(text.data(), text.data() + text.size(), value);
        if (end.ec != std::errc() || !std::isfinite(value)) return std::nullopt;
        return value + added_;
    }

    std::string_view rest_;
    std::string_view unit_;
    Unit written_;
    bool negative_ = false;
    bool pointed_ = false;        ///< the point has been read
    bool letterIsPoint_ = false;  ///< the last letter may have been the point
    std::string whole_, fraction_;
    int exponent_ = 0;
    double added_ = 0;
};

}  // namespace

std::optional<double> parseQuantity(std::string_view text, std::string_view unit) { return Reader(text, unit).read(); }

}  // namespace tiepoint
