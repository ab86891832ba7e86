// A resistor with one colour band that is taken for another: brown, red and orange in warm light, violet and blue, blue and green, grey and
// white, black and brown. Which colours are mixed up is common practice. Only values that are sold come in question: E24 (IEC 60063).

#include "core/parts/preferred.h"
#include "core/slips/figures.h"
#include "core/slips/kinds/kinds.h"
#include "core/slips/slip_words.h"
#include "core/words/words.h"

#include <array>
#include <cmath>

namespace tiepoint {
namespace {

using AlikePair = std::pair<BandColour, BandColour>;
constexpr std::array kAlike = {
    AlikePair{BandColour::Brown, BandColour::Red},    AlikePair{BandColour::Red, BandColour::Orange},
    AlikePair{BandColour::Brown, BandColour::Orange}, AlikePair{BandColour::Violet, BandColour::Blue},
    AlikePair{BandColour::Blue, BandColour::Green},   AlikePair{BandColour::Grey, BandColour::White},
    AlikePair{BandColour::Black, BandColour::Brown},  AlikePair{BandColour::Grey, BandColour::Violet}};
constexpr std::array<std::string_view, 4> kBandWords = {"slip.look-alike-band.1", "slip.look-alike-band.2",
                                                        "slip.look-alike-band.3", "slip.look-alike-band.4"};

bool isSold(double ohm) { return std::abs(nearestPreferred("E24", ohm) - ohm) <= 1e-9 * ohm; }

double toleranceOf(const Part& part) {
    const int index = part.kind->valueIndex("tolerance");
    constexpr double kUsual = 0.05;
    return index >= 0 ? part.value(index) : kUsual;
}

void offerBand(SlipSearch& search, int part, int value, std::vector<BandColour> bands, std::size_t band, int away) {
    const BandColour is = bands[band];
    for (const auto& [one, other] : kAlike) {
        if (is != one && is != other) continue;
        bands[band] = is == one ? other : one;
        const auto reading = readBands(bands);
        if (reading && isSold(reading->ohm)) offerFigure(search, part, false, value, reading->ohm, away);
    }
}

void searchLookAlikeBand(SlipSearch& search) {
    search.eachPart([&](int index, int away) {
        const Part& part = search.ground().part(index);
        const int value = resistanceValue(*part.kind);
        if (value < 0 || part.kind->values[static_cast<std::size_t>(value)].series.empty()) return;
        const auto bands = colourBands(part.value(value), toleranceOf(part));
        if (!bands || !isSold(part.value(value))) return;
        for (std::size_t band = 0; band + 1 < bands->size(); ++band)
            offerBand(search, index, value, *bands, band, away);
    });
}

std::string toldLookAlikeBand(const Bench& bench, const Slip& slip) {
    const double tolerance = toleranceOf(partOf(bench, slip));
    const auto wrong = colourBands(slip.wrong.figures.front().to, tolerance);
    const auto right = colourBands(slip.right.figures.front().to, tolerance);
    for (std::size_t band = 0; wrong && right && band < kBandWords.size() && wrong->size() == right->size(); ++band) {
        if ((*wrong)[band] == (*right)[band]) continue;
        const WrongFigure figure = figureOf(bench, slip);
        return say(kBandWords[band], {{"part", figure.part},
                                      {"wrong", figure.wrong},
                                      {"right", figure.right},
                                      {"band", bandName((*wrong)[band])},
                                      {"other", bandName((*right)[band])}});
    }
    return figureWords(bench, slip);
}

}  // namespace

const SlipKind kLookAlikeBand{"look-alike-band", 4,        "slip.look-alike-band.seen", true, searchLookAlikeBand,
                              toldLookAlikeBand, takeWords};

}  // namespace tiepoint
