// How long all findings of a full board with 100 parts take: with nothing wrong, with slips that need no search, and with a light that
// stays dark, so that the neighbouring hole of every lead near it is tried. Against the bars of 5 ms, and 50 ms with the search. Times are
// of this thread; other programs' don't count.

#include "bench/stopwatch.h"
#include "core/findings/finding.h"
#include "support/compact_bench.h"

#include <fmt/format.h>

#include <cstdio>

namespace tiepoint::test {
namespace {

constexpr double kBarMs = 5, kSearchBarMs = 50;
constexpr int kSlotsOfHalf = 12, kColumnsOfSlot = 5, kLeftColumns = 61;
constexpr std::size_t kParts = 100;

/// Writes a full board: in each slot of five columns a lamp behind three resistors, or behind a button and one; resistors between the
/// rails and cells in reserve bring it to its number of parts.
class FullBoard {
public:
    explicit FullBoard(int buttons) : buttons_(buttons) {
        text_ = "full; PS1 top+1 top-1 5 5; W1 top+50 bottom+50 red; W2 top-50 bottom-50 black";
        for (int slot = 0; slot < 2 * kSlotsOfHalf; ++slot) addSlot(slot);
        for (const bool upper : {true, false}) addLeftOver(upper);
        for (int cells = 1; parts_ < kParts; ++cells) addPart(fmt::format("CE{} - - 2", cells));
    }
    const std::string& text() const { return text_; }

private:
    void add(const std::string& item) { text_ += "; " + item; }
    void addPart(const std::string& item) {
        add(item);
        ++parts_;
    }
    void feed(bool upper, int plus, int minus) {
        int& hole = upper ? topHole_ : bottomHole_;
        const char* rail = upper ? "top" : "bottom";
        const char row = upper ? 'a' : 'j';
        add(fmt::format("W{} {}+{} {}{} red", wires_, rail, hole, row, plus));
        add(fmt::format("W{} {}-{} {}{} black", wires_ + 1, rail, hole, row, minus));
        wires_ += 2;
        ++hole;
    }
    void addResistor(char row, int from, int to, int ohm) {
        addPart(fmt::format("R{} {}{} {}{} {}", ++resistors_, row, from, row, to, ohm));
    }

    void addSlot(int slot) {
        const bool upper = slot % 2 == 0;
        const int column = 1 + slot / 2 * kColumnsOfSlot;
        const char light = upper ? 'e' : 'f';
        feed(upper, column, column + 4);
        if (slot < buttons_) {
            addPart(fmt::format("S{} {}{}", slot + 1, upper ? 'b' : 'f', column));
            addResistor(upper ? 'a' : 'j', column + 2, column + 3, 330);
        } else {
            for (const char row : {'b', 'c', 'd'})
                addResistor(upper ? row : static_cast<char>('j' - (row - 'a')), column, column + 3, 1000);
        }
        addPart(fmt::format("D{} {}{} {}{} green", slot + 1, light, column + 3, light, column + 4));
    }

    void addLeftOver(bool upper) {
        feed(upper, kLeftColumns, kLeftColumns + 2);
        for (const char row : {'b', 'c', 'd'}) {
            if (parts_ < kParts)
                addResistor(upper ? row : static_cast<char>('j' - (row - 'a')), kLeftColumns, kLeftColumns + 2, 2200);
        }
    }

    int buttons_;
    std::string text_;
    std::size_t parts_ = 1;  ///< the supply
    int wires_ = 3, resistors_ = 0, topHole_ = 3, bottomHole_ = 3;
};

struct TimedCase {
    std::string name;
    std::shared_ptr<const Snapshot> snapshot;
    std::string expected;  ///< the rule of the first finding; empty: nothing is wrong
    bool searches = false;
};

std::string replaced(std::string text, const std::string& from, const std::string& to) {
    const auto at = text.find(from);
    if (at == std::string::npos) slip("the text", from);
    return text.replace(at, from.size(), to);
}

TimedCase makeCase(std::string name, const std::string& text, std::string expected, bool searches = false) {
    const Bench bench = compactBench(text);
    if (bench.parts.size() != kParts) std::printf("note: %s has %zu parts\n", name.c_str(), bench.parts.size());
    return {std::move(name), evaluate(std::make_shared<const Bench>(bench)), std::move(expected), searches};
}

std::vector<TimedCase> cases() {
    const std::string calm = FullBoard(0).text(), pressed = FullBoard(6).text();
    return {
        makeCase("nothing wrong, no button", calm, ""),
        makeCase("nothing wrong, six buttons", pressed, ""),
        makeCase("an LED reversed", replaced(pressed, "D9 e24 e25", "D9 e25 e24"), "reversed"),
        makeCase("an LED behind a button reversed", replaced(pressed, "D1 e4 e5", "D1 e5 e4"), "reversed"),
        makeCase("a resistor times hundred", replaced(pressed, "R1 a3 a4 330", "R1 a3 a4 33000"), "too-dim"),
        makeCase("a short", pressed + "; W99 top+49 top-49 red", "short-circuit"),
        makeCase("an LED without its resistor", replaced(pressed, "R1 a3 a4 330", "R1 a3 a4 1"), "over-current"),
        makeCase("an LED one hole off", replaced(pressed, "D24 f59 f60", "D24 f58 f60"), "one-hole-off", true),
        makeCase("a resistor behind a button one hole off", replaced(pressed, "R1 a3 a4 330", "R1 a2 a4 330"),
                 "one-hole-off", true),
    };
}

int run() {
    Gate gate;
    for (const TimedCase& each : cases()) {
        const auto findings = inspect(*each.snapshot).findings;
        const std::string first = findings.empty() ? "" : findings.front().rule;
        std::printf("%s: %s\n", each.name.c_str(), first.empty() ? "nothing found" : findings.front().text.c_str());
        if (first != each.expected) {
            std::printf("FAIL expected %s, found %s\n", each.expected.c_str(), first.c_str());
            return 1;
        }
        std::vector<bench::Contestant> one{{each.name, [&] { keep(inspect(*each.snapshot)); }}};
        constexpr int kRepeats = 9;
        constexpr double kMs = 1e3;
        bench::interleave(one, kRepeats);
        gate.atMost(each.searches ? "ms with a search" : "ms", one.front().medianSecond * kMs,
                    each.searches ? kSearchBarMs : kBarMs);
    }
    return gate.exitCode();
}

}  // namespace
}  // namespace tiepoint::test

int main() { return tiepoint::test::run(); }
