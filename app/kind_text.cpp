#include "app/kind_report.h"
#include "core/base/quantity.h"
#include "core/bench/describe.h"

#include <fmt/format.h>

namespace tiepoint::app {
namespace {

std::string leadsText(const PartKind& kind) {
    std::string text = "\nLeads\n";
    for (const LeadSpec& lead : kind.leads) {
        text += fmt::format("  {:<10} {}{}\n", lead.name, lead.socket ? "socket: " : "", lead.description);
    }
    return text;
}

std::string rangeText(const ValueSpec& spec) {
    if (spec.type == ValueType::Number) {
        return fmt::format("{} to {}", formatSetting(spec.minimum, spec.unit), formatSetting(spec.maximum, spec.unit));
    }
    if (spec.type == ValueType::Switch) return "true or false";
    std::string text;
    for (const Choice& choice : spec.choices) text += (text.empty() ? "" : ", ") + choice.name;
    return text;
}

std::string specsText(std::string_view title, const std::vector<ValueSpec>& specs) {
    if (specs.empty()) return {};
    std::string text = fmt::format("\n{}\n", title);
    for (const ValueSpec& spec : specs) {
        text += fmt::format("  {:<18} {}; {} where nothing is said\n", spec.name, rangeText(spec),
                            describeSetting(spec, spec.fallback));
    }
    return text;
}

std::string sourcesText(const PartKind& kind) {
    std::string text = "\nSources\n";
    for (const SourceNote& note : kind.sources) {
        text += fmt::format("  {}: {} ({})\n", note.figure, note.source, note.status);
    }
    return text;
}

}  // namespace

std::string kindText(const PartKind& kind) {
    std::string text = fmt::format("{} ({})\n\n{}\n{}\n{}\n", kind.label, kind.name, kind.help.what, kind.help.leads,
                                   kind.help.ratings);
    if (!kind.help.caution.empty()) text += kind.help.caution + '\n';
    return text + leadsText(kind) + specsText("Values", kind.values) + specsText("State", kind.state) +
           sourcesText(kind);
}

}  // namespace tiepoint::app
