// A supply set to other volts, or with another number of cells.

#include "core/slips/figures.h"
#include "core/slips/kinds/kinds.h"

#include <array>
#include <cmath>

namespace tiepoint {
namespace {

/// What is found on a knob that someone else left, or set from memory; the usual voltages of circuits on such boards.
constexpr std::array kVoltsMixedUp = {0.0, 1.5, 3.0, 3.3, 4.5, 5.0, 6.0, 9.0, 12.0, 15.0, 24.0};

void offerNumbers(SlipSearch& search, int part, int value, std::span<const double> numbers, int away) {
    const double now = search.ground().part(part).value(value);
    for (const double to : numbers) {
        if (search.backwards() && to <= 0) continue;
        offerFigure(search, part, false, value, to, away, 1 / (1 + std::abs(to - now)));
    }
}

void searchWrongVolts(SlipSearch& search) {
    search.eachPart([&](int index, int away) {
        const Part& part = search.ground().part(index);
        if (!part.kind->isSupply) return;
        for (int value = 0; value < static_cast<int>(part.values.size()); ++value) {
            const ValueSpec& spec = part.kind->values[static_cast<std::size_t>(value)];
            if (!spec.sought || spec.type != ValueType::Number) continue;
            if (!spec.allowed.empty())
                offerNumbers(search, index, value, spec.allowed, away);
            else if (spec.unit == "V")
                offerNumbers(search, index, value, kVoltsMixedUp, away);
        }
    });
}

}  // namespace

const SlipKind kWrongVolts{"wrong-volts", 3, "slip.wrong-volts.seen", false, searchWrongVolts, settingWords, setWords};

}  // namespace tiepoint
