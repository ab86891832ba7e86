#include "core/findings/figure_words.h"

#include "core/base/quantity.h"
#include "core/words/words.h"

#include <algorithm>
#include <array>

namespace tiepoint {
namespace {

struct Named {
    std::string_view name, unit, words;
};
constexpr std::array kFigures{Named{"current", "A", "finding.figure.current"},
                              Named{"current now", "A", "finding.figure.currentNow"},
                              Named{"current turned round", "A", "finding.figure.currentTurned"},
                              Named{"voltage", "V", "finding.figure.voltage"},
                              Named{"anode", "V", "finding.figure.anode"},
                              Named{"cathode", "V", "finding.figure.cathode"},
                              Named{"reverse", "V", "finding.figure.reverse"},
                              Named{"power", "W", "finding.figure.power"},
                              Named{"resistance", "ohm", "finding.figure.resistance"},
                              Named{"resistance without it", "ohm", "finding.figure.resistanceWithout"}};
constexpr std::string_view kLimit = "limit";
/// Further above a limit the models say nothing true: no digits are told.
constexpr double kFarTooMuch = 3;

std::string namedInWords(const std::string& name, const std::string& figure) {
    const auto known = std::ranges::find(kFigures, std::string_view(name), &Named::name);
    if (known != kFigures.end()) return say(known->words, {{"figure", figure}});
    return say("finding.figure.of", {{"part", name}, {"figure", figure}});
}

/// Currents are told by the part that they run through.
std::string_view unitOf(const Finding& finding, const std::string& name) {
    const auto known = std::ranges::find(kFigures, std::string_view(name), &Named::name);
    if (known != kFigures.end()) return known->unit;
    return std::ranges::find(finding.parts, name) != finding.parts.end() ? "A" : "";
}

std::string textOfFigure(const Finding& finding, std::size_t index) {
    const auto& [name, figure] = finding.figures[index];
    const auto shown = finding.shown.find(name);
    if (shown != finding.shown.end()) return shown->second;
    // A limit is told with what it limits, in its unit.
    return formatQuantity(figure,
                          unitOf(finding, name == kLimit && index > 0 ? finding.figures[index - 1].first : name));
}

}  // namespace

void addFigure(Finding& finding, const std::string& name, const Figure& figure) {
    finding.figures.emplace_back(name, figure.exact());
    finding.shown[name] = figure.text();
}

void addFigure(Finding& finding, const std::string& name, const Figure& figure, double limit) {
    addFigure(finding, name, figure);
    finding.figures.emplace_back(kLimit, limit);
    finding.shown[std::string(kLimit)] = besideFigure(figure, limit);
}

std::string figureWords(const Finding& finding) {
    std::vector<std::string> words;
    const auto& figures = finding.figures;
    const auto isLimit = [&](std::size_t i) { return i < figures.size() && figures[i].first == kLimit; };
    for (std::size_t i = 0; i < figures.size(); ++i) {
        const auto& [name, figure] = figures[i];
        const std::string_view unit = unitOf(finding, name);
        if (unit.empty()) continue;  // limits too: they are told with what they limit
        if (!isLimit(i + 1)) {
            words.push_back(namedInWords(name, textOfFigure(finding, i)));
            continue;
        }
        const std::string limit = textOfFigure(finding, i + 1);
        words.push_back(namedInWords(
            name, figure > kFarTooMuch * figures[i + 1].second
                      ? say("finding.figure.far", {{"limit", limit}})
                      : say("finding.figure.limited", {{"figure", textOfFigure(finding, i)}, {"limit", limit}})));
    }
    return sayList(words, "list.comma");
}

}  // namespace tiepoint
