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
constexpr std::array kFigures{Named{"current", "A"},      Named{"current now", "A"}, Named{"current turned round", "A"}, Named{"voltage", "V"},
                              Named{"anode", "V"},        Named{"cathode", "V"},     Named{"reverse", "V"},              Named{"power", "W"},
                              Named{"resistance", "ohm"}, Named{"resistance without it", "ohm"}};
constexpr std::string_view kLimit = "limit";

/// Currents are told by the part that they run through.
std::string_view unitOf(const Finding& finding, const std::string& name) {
    const auto known = std::ranges::find(kFigures, std::string_view(name), &Named::name);
    if (known != kFigures.end()) return known->unit;
    return std::ranges::find(finding.parts, name) != finding.parts.end() ? "A" : "";
}

}  // namespace

std::string figureWords(const Finding& finding) {
    std::string words;
    std::string_view last;  // a limit is one of what was told before it
    for (const auto& [name, figure] : finding.figures) {
        const std::string_view unit = name == kLimit ? last : unitOf(finding, name);
        if (unit.empty()) continue;
        last = unit;
        words += fmt::format("{}{} {}", words.empty() ? "" : ", ", name, formatQuantity(figure, unit));
    }
    return words;
}

}  // namespace tiepoint
