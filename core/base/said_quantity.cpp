// The text is parted at blanks first. A piece that begins with a digit (or with a letter of IEC 60062 before a digit) is read as a number;
// what follows in it, or else the next piece or two, is looked up among all the ways to say a prefix and a unit. The number is put together
// as text and converted once, so that "4k7" is exactly 4700.

#include "core/base/said_quantity.h"

#include "core/base/unit.h"
#include "core/base/utf8.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <optional>

namespace tiepoint {
namespace {

struct SaidPrefix {
    std::string_view sign, name;
    int exponent;
};
constexpr std::array kSaidPrefixes = {
    SaidPrefix{"p", "pico", -12}, SaidPrefix{"n", "nano", -9},  SaidPrefix{"u", "micro", -6},
    SaidPrefix{"\u00b5", "", -6}, SaidPrefix{"\u03bc", "", -6}, SaidPrefix{"m", "milli", -3},
    SaidPrefix{"k", "kilo", 3},   SaidPrefix{"K", "", 3},       SaidPrefix{"M", "mega", 6},
    SaidPrefix{"G", "giga", 9},   SaidPrefix{"", "kil", 3},  ///< kilohm, megohm: the o or a is swallowed
    SaidPrefix{"", "meg", 6}};

struct SaidUnit {
    std::string_view unit;
    std::vector<std::string_view> signs;  ///< behind signs of prefixes too
    std::vector<std::string_view> names;  ///< behind names of prefixes too; without regard to capitals
};

const std::vector<SaidUnit>& saidUnits() {
    static const std::vector<SaidUnit> kUnits = {
        {"ohm", {"\u03a9", "\u2126", "R", "r"}, {"ohm", "ohms"}},
        {"V", {"V", "v"}, {"volt", "volts"}},
        {"A", {"A", "a"}, {"amp", "amps", "ampere", "amperes"}},
        {"W", {"W", "w"}, {"watt", "watts"}},
        {"F", {"F"}, {"farad", "farads"}},
        {"H", {"H"}, {"henry", "henries", "henrys"}},
        {"s", {"s"}, {"sec", "second", "seconds"}},
        {"Hz", {"Hz"}, {"hertz"}},
        {"lx", {"lx"}, {"lux"}},
        {"K", {}, {"kelvin", "kelvins"}},  // 10K is said of ohms
        {"\u00b0C", {"\u00b0C"}, {"celsius"}},
        {"%", {"%"}, {"percent"}},
    };
    return kUnits;
}

struct Spoken {
    std::string text;      ///< with capitals as typed, or in small letters
    bool anyCase = false;  ///< text is in small letters, and capitals don't matter
    std::string_view unit;
    int exponent = 0;
};

/// Every way to say a prefix, a unit, or both.
const std::vector<Spoken>& ways() {
    static const std::vector<Spoken> kWays = [] {
        std::vector<Spoken> all;
        for (const SaidPrefix& prefix : kSaidPrefixes) {
            if (!prefix.sign.empty()) all.push_back({std::string(prefix.sign), false, "", prefix.exponent});
            if (prefix.name.size() > 2) all.push_back({std::string(prefix.name), true, "", prefix.exponent});
        }
        for (const SaidUnit& unit : saidUnits()) {
            const int own = unit.unit == "%" ? -2 : 0;
            for (const std::string_view sign : unit.signs) all.push_back({std::string(sign), false, unit.unit, own});
            for (const std::string_view name : unit.names) all.push_back({std::string(name), true, unit.unit, own});
            const Unit written = unitOf(unit.unit);
            for (const SaidPrefix& prefix : kSaidPrefixes) {
                if (prefix.exponent < written.least || prefix.exponent > written.most) continue;
                for (const std::string_view sign : unit.signs) {
                    if (!prefix.sign.empty())
                        all.push_back({fmt::format("{}{}", prefix.sign, sign), false, unit.unit, prefix.exponent});
                }
                for (const std::string_view name : unit.names) {
                    // kohm, Mohm: a sign before a name; which of m and M it is counts there too.
                    if (!prefix.sign.empty())
                        all.push_back({fmt::format("{}{}", prefix.sign, name), false, unit.unit, prefix.exponent});
                    if (!prefix.name.empty())
                        all.push_back({fmt::format("{}{}", prefix.name, name), true, unit.unit, prefix.exponent});
                }
            }
        }
        return all;
    }();
    return kWays;
}

std::string inSmallLetters(std::string_view text) {
    std::string small(text);
    for (char& c : small) {
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    }
    return small;
}

/// A sign of a prefix keeps its case; the name behind it may have any ("kOhm", "MOHM" is mega).
std::string withSmallTail(std::string_view text) {
    return text.empty() ? std::string() : std::string(text.substr(0, 1)) + inSmallLetters(text.substr(1));
}

struct SaidMeaning {
    std::string_view unit;
    int exponent = 0;
    friend bool operator==(const SaidMeaning&, const SaidMeaning&) = default;
};

std::optional<SaidMeaning> saidMeaningOf(std::string_view word) {
    const std::string small = inSmallLetters(word), smallTail = withSmallTail(word);
    for (const Spoken& way : ways()) {
        if (way.anyCase ? way.text == small : way.text == word || way.text == smallTail)
            return SaidMeaning{way.unit, way.exponent};
    }
    return std::nullopt;
}

/// What an unfinished word can only become. Names alone count: one letter of a sign is finished.
std::optional<SaidMeaning> onlyMeaningOf(std::string_view beginning) {
    const std::string small = inSmallLetters(beginning);
    constexpr std::size_t kLongestPrefix = 4;
    std::optional<SaidMeaning> only;
    for (const Spoken& way : ways()) {
        if (!way.anyCase || !way.text.starts_with(small)) continue;
        // Whatever unit follows a prefix, the number is the same.
        const bool atPrefix = small.size() <= kLongestPrefix && way.unit != "%" && way.exponent != 0;
        SaidMeaning here{atPrefix ? std::string_view() : way.unit, way.exponent};
        if (only && only->exponent == here.exponent && here.exponent != 0 && here.unit != only->unit)
            only->unit = here.unit = {};  // kiloh...: ohms or hertz, the number is the same
        if (only && *only != here) return std::nullopt;
        only = here;
    }
    return only;
}

std::size_t lettersIn(std::string_view text) {
    return static_cast<std::size_t>(std::ranges::count_if(text, [](char c) { return !isContinuation(c); }));
}

/// The number at the front of a piece.
struct FrontNumber {
    std::string whole, fraction;
    int exponent = 0;
    double over = 1;  ///< of 1/4
    bool negative = false, ambiguous = false;
    std::size_t size = 0;   ///< bytes that it takes
    std::string_view unit;  ///< a letter in it said the unit: 4R7
    bool isWhole = false;   ///< nothing may follow that says a prefix: 4k7

    bool isOne() const { return !whole.empty() || !fraction.empty(); }

    /// Nothing where it is too large or too small for a double.
    std::optional<double> value() const {
        const std::string text = fmt::format("{}{}.{}e{}", negative ? "-" : "", whole.empty() ? "0" : whole,
                                             fraction.empty() ? "0" : fraction, exponent);
        double number = 0;
        const auto end = std::from_chars(text.data(), text.data() + text.size(), number);
        return end.ec == std::errc() ? std::optional(number / over) : std::nullopt;
    }
};

class NumberReader {
public:
    explicit NumberReader(std::string_view piece) : piece_(piece) {}

    FrontNumber read() {
        if (take("-") || take("\u2212"))
            number_.negative = true;
        else
            take("+");
        number_.whole = digits();
        if (!readFraction()) readPoint();
        if (number_.isOne()) readExponent();
        if (number_.fraction.empty() && number_.over == 1 && number_.exponent == 0) readLetterPoint();
        number_.size = at_;
        return number_;
    }

private:
    bool take(std::string_view text) {
        if (!piece_.substr(at_).starts_with(text)) return false;
        at_ += text.size();
        return true;
    }

    std::string digits() {
        const std::size_t begin = at_;
        while (at_ < piece_.size() && isDigit(piece_[at_])) ++at_;
        return std::string(piece_.substr(begin, at_ - begin));
    }

    /// 1/4, as wattages are written.
    bool readFraction() {
        const std::size_t before = at_;
        if (number_.whole.empty() || !take("/")) return false;
        const std::string below = digits();
        if (below.empty() || below.size() > 3 || std::stoi(below) == 0) {
            at_ = before;
            return false;
        }
        number_.over = std::stoi(below);
        return true;
    }

    void readPoint() {
        const std::size_t before = at_;
        const bool comma = piece_.substr(at_).starts_with(',');
        if (!take(".") && !take(",")) return;
        number_.fraction = digits();
        if (number_.fraction.empty()) at_ = before;  // the end of a sentence
        number_.ambiguous =
            comma && number_.fraction.size() == 3 && number_.whole.find_first_not_of('0') != std::string::npos;
    }

    void readExponent() {
        const std::size_t before = at_;
        if (!take("e") && !take("E")) return;
        const bool down = take("-") || take("\u2212");
        if (!down) take("+");
        const std::string power = digits();
        if (power.empty() || power.size() > 3) {
            at_ = before;
            return;
        }
        number_.exponent = (down ? -1 : 1) * std::stoi(power);
    }

    /// 4k7, 4R7, 3V3; R47 without a digit before.
    void readLetterPoint() {
        constexpr std::size_t kMostBehindLetter = 3;  // 1n4148 is no number
        const std::size_t before = at_;
        for (const Spoken& way : ways()) {
            const bool isLetter = !way.anyCase && lettersIn(way.text) == 1;
            if (!isLetter || way.unit == "%" || (number_.whole.empty() && way.unit != "ohm")) continue;
            if (!take(way.text)) continue;
            const std::string behind = digits();
            if (!behind.empty() && behind.size() <= kMostBehindLetter) {
                number_.fraction = behind;
                number_.exponent = way.exponent;
                number_.unit = way.unit;
                number_.isWhole = true;
                return;
            }
            at_ = before;
        }
    }

    std::string_view piece_;
    std::size_t at_ = 0;
    FrontNumber number_;
};

std::vector<std::string_view> piecesOf(std::string_view text) {
    std::vector<std::string_view> pieces;
    constexpr std::array<std::string_view, 5> kBlanks = {" ", "\t", "\u00a0", "\u2009", "\u202f"};
    std::size_t begin = 0;
    const auto end = [&](std::size_t at) {
        if (at > begin) pieces.push_back(text.substr(begin, at - begin));
    };
    for (std::size_t at = 0; at < text.size();) {
        const auto blank =
            std::ranges::find_if(kBlanks, [&](std::string_view each) { return text.substr(at).starts_with(each); });
        if (blank == kBlanks.end()) {
            ++at;
            continue;
        }
        end(at);
        at += blank->size();
        begin = at;
    }
    end(text.size());
    return pieces;
}

class SaidReader {
public:
    explicit SaidReader(std::string_view text) : pieces_(piecesOf(text)), ended_(text.ends_with(' ')) {}

    SaidWords read() {
        while (next_ < pieces_.size()) {
            if (!readQuantity()) said_.words.emplace_back(stripped(pieces_[next_++]));
        }
        std::erase_if(said_.words, [](const std::string& word) { return word.empty(); });
        return std::move(said_);
    }

private:
    /// Without the marks of a sentence around it.
    static std::string_view stripped(std::string_view word) {
        constexpr std::string_view kMarks = ",;:.()\"'";
        while (!word.empty() && kMarks.find(word.front()) != std::string_view::npos) word.remove_prefix(1);
        while (!word.empty() && kMarks.find(word.back()) != std::string_view::npos) word.remove_suffix(1);
        return word;
    }

    bool readQuantity() {
        FrontNumber number = NumberReader(pieces_[next_]).read();
        if (!number.isOne()) return false;
        std::string text(pieces_[next_].substr(0, number.size));
        const std::string_view attached = stripped(pieces_[next_].substr(number.size));
        std::size_t taken = 1;
        if (attached.empty() && !number.isWhole) taken += takeThousands(number, text);
        SaidMeaning meaning{number.unit, 0};
        if (!attached.empty()) {
            const auto said = spokenAt(attached, next_ + taken, taken);
            if (!said || (number.isWhole && !fits(number, *said))) return false;
            meaning = merged(meaning, *said);
            text = fmt::format("{}{}", text, attached);
            if (taken > 1) text = fmt::format("{} {}", text, stripped(pieces_[next_ + 1]));
        } else if (next_ + taken < pieces_.size()) {
            const std::size_t unitAt = next_ + taken;
            std::size_t more = 1;
            const std::string_view word = stripped(pieces_[unitAt]);
            const auto said = spokenAt(word, unitAt + 1, more);
            if (said && (!number.isWhole || fits(number, *said))) {
                meaning = merged(meaning, *said);
                for (std::size_t i = 0; i < more; ++i) text = fmt::format("{} {}", text, stripped(pieces_[unitAt + i]));
                taken += more;
            }
        }
        number.exponent += number.isWhole ? 0 : meaning.exponent;
        const auto value = number.value();
        if (!value) return false;
        said_.quantities.push_back({*value, std::string(meaning.unit), text, number.ambiguous});
        next_ += taken;
        return true;
    }

    /// "10 000": groups of three behind at most three.
    std::size_t takeThousands(FrontNumber& number, std::string& text) const {
        if (!number.fraction.empty() || number.whole.size() > 3 || number.over != 1 || number.exponent != 0) return 0;
        std::size_t groups = 0;
        for (std::size_t at = next_ + 1; at < pieces_.size(); ++at, ++groups) {
            const std::string_view group = pieces_[at];
            if (group.size() != 3 || !std::ranges::all_of(group, isDigit)) break;
        }
        // A list of numbers is none of thousands.
        const std::size_t behind = next_ + 1 + groups;
        const bool said = behind < pieces_.size() && saidMeaningOf(stripped(pieces_[behind]));
        const auto isRound = [](std::string_view group) { return group == "000"; };
        const auto first = pieces_.begin() + static_cast<std::ptrdiff_t>(next_) + 1;
        const auto last = first + static_cast<std::ptrdiff_t>(groups);
        if (!said && !std::all_of(first, last, isRound)) return 0;
        std::for_each(first, last, [&](std::string_view group) {
            number.whole += group;
            text = fmt::format("{} {}", text, group);
        });
        return groups;
    }

    /// What a word says, with the next one where they belong together: "kilo ohm", "per cent". `taken` grows by one then.
    std::optional<SaidMeaning> spokenAt(std::string_view word, std::size_t behind, std::size_t& taken) const {
        std::string joined(word);
        std::erase(joined, '-');  // kilo-ohm
        const bool isLast = behind >= pieces_.size();
        if (!isLast) {
            const std::string both = joined + std::string(stripped(pieces_[behind]));
            const auto prefix = saidMeaningOf(joined);
            const auto said = (prefix && prefix->unit.empty()) || inSmallLetters(joined) == "per"
                                  ? saidMeaningOf(inSmallLetters(joined) == "per" ? inSmallLetters(both) : both)
                                  : std::nullopt;
            if (said && !said->unit.empty()) {
                ++taken;
                return said;
            }
        }
        if (const auto said = saidMeaningOf(joined)) return said;
        return isLast && !ended_ ? onlyMeaningOf(joined) : std::nullopt;
    }

    /// Behind 4k7 only the unit may be said (4k7 ohm), behind 4R7 only the same one.
    static bool fits(const FrontNumber& number, const SaidMeaning& said) {
        return said.exponent == 0 && (number.unit.empty() || number.unit == said.unit);
    }
    static SaidMeaning merged(const SaidMeaning& inNumber, const SaidMeaning& said) {
        return {said.unit.empty() ? inNumber.unit : said.unit, said.exponent};
    }

    std::vector<std::string_view> pieces_;
    bool ended_;  ///< the last word is finished
    std::size_t next_ = 0;
    SaidWords said_;
};

}  // namespace

SaidWords readSaid(std::string_view text) { return SaidReader(text).read(); }

}  // namespace tiepoint
