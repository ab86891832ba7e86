#pragma once
// What the parts of a bench remember from one instant to the next, by their ids, so that it stays with a part through any edit of the
// others: the voltage of a capacitor, the current of an inductor, how fast a motor turns, how warm a filament is, which way a latch
// fell. Never saved, and no change to the document: running a bench dirties nothing. A plain value.

#include <compare>
#include <cstdint>
#include <map>
#include <string>
#include <string_view>

namespace tiepoint {

/// What can be remembered; SI units.
enum class Memory : std::uint8_t {
    Voltage,      ///< across a capacitance, V
    Current,      ///< through an inductance, A
    Speed,        ///< of something that turns, rad/s
    Temperature,  ///< of something that heats itself, degrees Celsius
    Bit,          ///< of something that stays where it fell, 0 or 1
};

/// Whether what is remembered can drive current by itself. Warmth and bits can't.
constexpr bool holdsEnergy(Memory what) {
    return what == Memory::Voltage || what == Memory::Current || what == Memory::Speed;
}

struct State {
    struct Key {
        std::string part;  ///< id
        Memory what = Memory::Voltage;
        int place = 0;  ///< which of that sort in the part, in the order of its kind's model
        auto operator<=>(const Key&) const = default;
    };

    std::map<Key, double> values;

    /// What a part remembers; `otherwise` where it remembers nothing of that sort.
    double of(std::string_view part, Memory what, int place = 0, double otherwise = 0) const;
    bool operator==(const State&) const = default;
};

}  // namespace tiepoint
