#include "core/sizing/series_resistor.h"

#include "core/base/quantity.h"
#include "core/bench/resolve.h"
#include "core/circuit/element.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace tiepoint {
namespace {

constexpr std::array kUsualRatingsWatt = {0.125, 0.25, 0.5, 1.0, 2.0, 5.0, 10.0};  // common practice
constexpr double kRoom = 2;  ///< a resistor at half its rating stays touchable (common practice)
constexpr int kHalvings = 200;

/// The junctions of all lights and diodes of a loop.
class LoopLaw {
public:
    explicit LoopLaw(const ResistorQuestion& question) {
        add(question.light, question.lights);
        for (const Part& part : question.inSeries) add(part, 1);
    }
    double voltAt(double ampere) const {
        double volt = 0;
        for (const auto& [count, junction] : junctions_) volt += count * junction.forwardVoltAt(ampere);
        return volt;
    }

private:
    void add(const Part& part, int count) {
        for (const ElementSpec& spec : part.kind->model) {
            if (findElement(spec.element) == &kJunctionElement)
                junctions_.emplace_back(count, JunctionLaw(figuresOf(kJunctionElement, spec, part)));
        }
    }

    std::vector<std::pair<int, JunctionLaw>> junctions_;  ///< so many of each
};

/// The current at which lights and resistances together take the supply's voltage. What is left over falls steadily as the current rises.
double ampereWith(const ResistorQuestion& question, const LoopLaw& law, double ohm) {
    const double wholeOhm = ohm + question.seriesOhm;
    double low = 0, high = question.supplyVolt / wholeOhm;
    for (int i = 0; i < kHalvings && low < high; ++i) {
        const double middle = low + (high - low) / 2;
        if (middle == low || middle == high) break;
        const double left = question.supplyVolt - law.voltAt(middle) - wholeOhm * middle;
        (left > 0 ? low : high) = middle;
    }
    return low;
}

double maximumAmpere(const Part& light) {
    for (const Rating& rating : light.kind->ratings) {
        if (rating.quantity == "current" && rating.leads.empty() && rating.maximum) return resolve(rating.limit, light);
    }
    return 0;
}

std::string lightsInWords(const ResistorQuestion& question) {
    const std::size_t count = static_cast<std::size_t>(question.lights) + question.inSeries.size();
    if (count == 1) return "the LED takes";
    const auto isLight = [](const Part& part) { return part.kind->needsResistor; };
    const bool lightsOnly = std::all_of(question.inSeries.begin(), question.inSeries.end(), isLight);
    return fmt::format("{} {} in series take", count, lightsOnly ? "LEDs" : "LEDs and diodes");
}

std::optional<Error> refusal(const ResistorQuestion& question) {
    const auto refuse = [](std::string why) { return Error{ErrorKind::Range, std::move(why)}; };
    if (question.light.kind == nullptr || !question.light.kind->emitsLight || !question.light.kind->needsResistor)
        return refuse("only an LED needs such a resistor");
    if (question.lights < 1) return refuse("at least one LED");
    if (!(question.wantedAmpere > 0)) return refuse("the current has to be more than nothing");
    if (const double most = maximumAmpere(question.light); question.wantedAmpere > most)
        return refuse(fmt::format("{} is above the {} maximum of this LED", formatQuantity(question.wantedAmpere, "A"),
                                  formatQuantity(most, "A")));
    return std::nullopt;
}

}  // namespace

Result<ResistorChoice> chooseResistor(const ResistorQuestion& question) {
    if (auto refused = refusal(question)) return std::move(*refused);
    const LoopLaw law(question);
    ResistorChoice choice;
    choice.lightVolt = law.voltAt(question.wantedAmpere);
    choice.exactOhm = (question.supplyVolt - choice.lightVolt) / question.wantedAmpere - question.seriesOhm;
    if (!(choice.exactOhm > 0)) {
        if (question.supplyVolt > choice.lightVolt)
            return Error{ErrorKind::Range, fmt::format("the {} that are in its loop besides let less than {} through",
                                                       formatQuantity(question.seriesOhm, "ohm"),
                                                       formatQuantity(question.wantedAmpere, "A"))};
        return Error{ErrorKind::Range,
                     fmt::format("{} {} at {}, and the supply gives {}", lightsInWords(question),
                                 formatQuantity(choice.lightVolt, "V"), formatQuantity(question.wantedAmpere, "A"),
                                 formatQuantity(question.supplyVolt, "V"))};
    }
    const std::vector<double> held = question.drawer.from(choice.exactOhm, 1);
    if (held.empty())
        return Error{ErrorKind::Range,
                     fmt::format("the drawer holds no resistor of {} or more", formatQuantity(choice.exactOhm, "ohm"))};
    choice.ohm = held.front();
    choice.ampere = ampereWith(question, law, choice.ohm);
    choice.watt = choice.ampere * choice.ampere * choice.ohm;
    const auto bears = [&](double rating) { return rating >= kRoom * choice.watt; };
    const auto rating = std::find_if(kUsualRatingsWatt.begin(), kUsualRatingsWatt.end(), bears);
    choice.ratingWatt = rating == kUsualRatingsWatt.end() ? kRoom * choice.watt : *rating;
    choice.bands = colourBands(choice.ohm, question.tolerance);
    return choice;
}

}  // namespace tiepoint
