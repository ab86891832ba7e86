#pragma once
// The law of a current that light makes in a junction: in proportion to the light, whatever the voltage. It runs inside from `to` to
// `from`, so that what is joined to it outside is driven out of `from`, as out of a supply's plus. The junction itself, through which
// the current returns where nothing else takes it, is an element of its own.
//
// Full sunlight, 1000 W/m2, counts as 100,000 lx (common practice: 100 to 120 lumens for each watt of daylight).
// Units: volt, ampere, siemens, lux. Thread rule: plain values and pure functions.

#include "core/circuit/law.h"
#include "core/instant/surroundings.h"

#include <utility>

namespace tiepoint {

inline constexpr double kSunLux = 100e3;  ///< of 1000 W/m2

class PhotocurrentLaw : public LawShape<2, 1, 1> {
public:
    static constexpr ElementParameter kParameters[] = {{"current"}, {"light"}};  // so much at so many lux
    static constexpr ElementDescription kElement{"photocurrent", kFromAndTo, kParameters};
    static constexpr std::array<TerminalPair, 1> kPortEnds{{{0, 1}}}, kPathEnds{{{0, 1}}}, kTies{{{0, 1}}};
    static constexpr bool kFeeds = true;

    explicit PhotocurrentLaw(std::span<const double> figures) : amperePerLux_(figures[0] / figures[1]) { surround({}); }

    double ampere() const { return ampere_; }
    bool surround(const Surroundings& surroundings) {
        const double before = std::exchange(ampere_, amperePerLux_ * surroundings.lightLux);
        return before != ampere_;
    }

    Tangent tangentAt(const Volts& touch, unsigned /*bits*/, double /*leakSiemens*/) const {
        return {{-ampere_}, {}, touch};
    }

private:
    double amperePerLux_, ampere_ = 0;
};

}  // namespace tiepoint
