// Which prefixes are usual: the SI brochure (9th edition, section 3) allows all of them before every unit but the degree Celsius's rare
// ones; what is left out here nobody writes in electronics (common practice): a kilofarad, a millihertz, that is read as megahertz, a
// kilosecond, a kilokelvin.

#include "core/base/unit.h"

#include <algorithm>
#include <array>

namespace tiepoint {
namespace {

constexpr bool kWholeTenths = true;
constexpr std::string_view kVoltExamples = "5, 3V3 and 500m";
constexpr std::array kUnits = {
    Unit{"", "", 0, 0, kWholeTenths, "2, 0.5 and 5 %"},
    Unit{"ohm", "\u03a9", -12, 9, kWholeTenths, "220, 4k7, 4R7 and 1M"},
    Unit{"V", "V", -12, 9, kWholeTenths, kVoltExamples},
    Unit{"A", "A", -12, 9, kWholeTenths, "1, 0.5 and 20m"},
    Unit{"W", "W", -12, 9, kWholeTenths, "1, 0.25 and 500m"},
    Unit{"F", "F", -12, 0, !kWholeTenths, "100n, 4u7, 10 \u00b5F and 330p"},
    Unit{"H", "H", -9, 0, !kWholeTenths, "1m, 4m7 and 100 \u00b5H"},
    Unit{"s", "s", -12, 0, kWholeTenths, "2, 0.5 and 20 ms"},
    Unit{"Hz", "Hz", 0, 9, kWholeTenths, "50, 1k and 2M2"},
    Unit{"A/V2", "A/V\u00b2", -6, 0, kWholeTenths, "0.1, 100m and 20m"},
    Unit{"lx", "lx", 0, 3, kWholeTenths, "300, 0.5 and 10k"},
    Unit{"K", "K", 0, 0, kWholeTenths, "298, 298.15 and 25 \u00b0C"},
    Unit{"\u00b0C", "\u00b0C", 0, 0, kWholeTenths, "25, 36.6 and \u221210"},
};

}  // namespace

std::span<const Unit> units() { return kUnits; }

Unit unitOf(std::string_view name) {
    const auto found = std::ranges::find(kUnits, name, &Unit::name);
    return found == kUnits.end() ? Unit{name, name, 0, 0, true, {}} : *found;
}

}  // namespace tiepoint
