#include "core/findings/figure_words.h"

#include "core/base/quantity.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace tiepoint {
namespace {

struct Named {
    std::string_view name, unit;
};
constexpr std::array kFigures{Named{"current", "A"},
                              Named{"current now", "A"},
                              Named{"current turned round", "A"},
                              Named{"voltage", "V"},
                              Named{"anode", "V"},
                              Named{"cathode", "V"},
                              Named{"reverse", "V"},
                              Named{"power", "W"},
                              Named{"resistance", "ohm"},
                              Named{"resistance without it", "ohm"}};
constexpr std::string_view kLimit = "limit";
/// Further above a limit the models say nothing true: no digits are told.
constexpr double kFarTooMuch = 3;

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
    std::string words;
    const auto& figures = finding.figures;
    const auto isLimit = [&](std::size_t i) { return i < figures.size() && figures[i].first == kLimit; };
    for (std::size_t i = 0; i < figures.size(); ++i) {
        const auto& [name, figure] = figures[i];
        const std::string_view unit = unitOf(finding, name);
        if (unit.empty()) continue;  // limits too: they are told with what they limit
        words += fmt::format("{}{} ", words.empty() ? "" : ", ", name);
        if (!isLimit(i + 1))
            words += textOfFigure(finding, i);
        else if (figure > kFarTooMuch * figures[i + 1].second)
            words += fmt::format("above three times its limit of {}", textOfFigure(finding, i + 1));
        else
            words += fmt::format("{}, limit {}", textOfFigure(finding, i), textOfFigure(finding, i + 1));
    }
    return words;
}

}  // namespace tiepoint
