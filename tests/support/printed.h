#pragma once
// Reads printed figures back, in whole steps of their last digit, so that tests can add up what people see.

#include <gtest/gtest.h>

#include <cmath>
#include <cstdint>
#include <cstdlib>
#include <string>

namespace tiepoint::test {

struct Printed {
    std::int64_t digits = 0;  ///< without the point, with its sign
    int exponent = 0;         ///< of ten, of the last digit, in the SI unit
    std::string unit;         ///< with its prefix: "mA"
    bool isNothing() const { return digits == 0; }
    double value() const { return static_cast<double>(digits) * std::pow(10.0, exponent); }
    double step() const { return std::pow(10.0, exponent); }
};

/// "−9.37 mA" is -937 of ten to the power -5. Fails on anything else.
inline Printed printed(std::string text) {
    Printed read;
    const std::string minus = "\u2212";
    const bool negative = text.starts_with(minus);
    if (negative) text.erase(0, minus.size());
    const auto gap = text.find(' ');
    EXPECT_NE(gap, std::string::npos) << text;
    read.unit = text.substr(gap + 1);
    std::string number = text.substr(0, gap);
    const auto point = number.find('.');
    if (point != std::string::npos) {
        read.exponent = -static_cast<int>(number.size() - point - 1);
        number.erase(point, 1);
    }
    read.digits = std::atoll(number.c_str()) * (negative ? -1 : 1);
    const std::string prefix = read.unit.substr(0, read.unit.size() - 1);
    const struct {
        const char* symbol;
        int exponent;
    } prefixes[] = {{"", 0}, {"m", -3}, {"\u00b5", -6}, {"n", -9}, {"k", 3}};
    for (const auto& each : prefixes)
        if (prefix == each.symbol) return read.exponent += each.exponent, read;
    ADD_FAILURE() << "the unit of " << text;
    return read;
}

/// Adds printed figures up: all in one unit and of one step, but for bare zeroes.
class PrintedSum {
public:
    void add(const std::string& text, int sign = 1) {
        const Printed each = printed(text);
        digits_ += sign * each.digits;
        if (each.isNothing()) return;
        if (unit_.empty()) {
            unit_ = each.unit;
            exponent_ = each.exponent;
        }
        EXPECT_EQ(each.unit, unit_) << "figures that stand together have one unit";
        EXPECT_EQ(each.exponent, exponent_) << "and one last digit";
    }
    std::int64_t digits() const { return digits_; }

private:
    std::int64_t digits_ = 0;
    int exponent_ = 0;
    std::string unit_;
};

}  // namespace tiepoint::test
