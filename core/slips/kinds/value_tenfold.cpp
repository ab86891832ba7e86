// A value of the right figures and the wrong power of ten: the multiplier of the colour code misread, or the wrong bag.

#include "core/slips/figures.h"
#include "core/slips/kinds/kinds.h"

#include <cmath>
#include <cstdlib>

namespace tiepoint {
namespace {

constexpr double kTen = 10, kHundred = 100, kHundredShare = 0.3;

/// To ten digits, so that ten times a tenth is the same number again.
double tidied(double value) {
    constexpr int kDigits = 10;
    const int decimals = kDigits - 1 - static_cast<int>(std::floor(std::log10(value)));
    const double scale = std::pow(10.0, std::abs(decimals));
    return decimals >= 0 ? std::round(value * scale) / scale : std::round(value / scale) * scale;
}

void searchValueTenfold(SlipSearch& search) {
    search.eachPart([&](int index, int away) {
        const Part& part = search.ground().part(index);
        for (int value = 0; value < static_cast<int>(part.values.size()); ++value) {
            if (part.kind->values[static_cast<std::size_t>(value)].series.empty()) continue;
            const double now = part.value(value);
            if (!(now > 0)) continue;
            for (const double by : {kTen, 1 / kTen, kHundred, 1 / kHundred})
                offerFigure(search, index, false, value, tidied(now * by), away,
                            by == kTen || by * kTen == 1 ? 1 : kHundredShare);
        }
    });
}

}  // namespace

const SlipKind kValueTenfold{"value-tenfold", 5,        "slip.value-tenfold.seen", true, searchValueTenfold,
                             figureWords,     takeWords};

}  // namespace tiepoint
