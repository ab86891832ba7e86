#include "app/finding_report.h"

#include "app/edit_json.h"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>

namespace tiepoint::app {
namespace {

void writeFinding(JsonWriter& json, const Bench& bench, const Finding& finding) {
    std::vector<std::string> holes;
    std::transform(finding.holes.begin(), finding.holes.end(), std::back_inserter(holes),
                   [](const Hole& hole) { return toString(hole); });
    json.beginObject();
    if (isPlaceOnly(finding))
        json.key("rule").null().key("severity").null();
    else
        json.field("rule", finding.rule).field("severity", severityName(finding.severity));
    json.texts("parts", finding.parts).texts("holes", holes).field("text", finding.text);
    json.key("figures").beginObject(JsonWriter::Form::Row);
    for (const auto& [name, figure] : finding.figures) json.field(name, figure);
    json.endObject();
    if (finding.mend) {
        json.key("mend").beginObject().field("text", finding.mend->text);
        writeEdit(json, bench, finding.mend->edit);
        json.endObject();
    } else {
        json.key("mend").null();
    }
    json.endObject();
}

}  // namespace

std::string_view severityName(Severity severity) {
    switch (severity) {
        case Severity::Remark:
            return "remark";
        case Severity::Risk:
            return "risk";
        case Severity::Fault:
            return "fault";
    }
    return {};
}

Reveal printedLevel(const Bench& bench, bool json) {
    return bench.disclosure || isLocked(bench) || !json ? revealOf(bench) : Reveal::Mend;
}

void writeFindings(JsonWriter& json, const Bench& bench, const Report& report) {
    json.key("findings").beginArray();
    for (const Finding& finding : report.findings) writeFinding(json, bench, finding);
    json.endArray();
}

std::string findingsText(const Report& report) {
    std::string text;
    for (const Finding& finding : report.findings) {
        if (isPlaceOnly(finding)) {
            text += fmt::format("  {}\n", finding.text);
            continue;
        }
        text += fmt::format("  {}: {}\n", severityName(finding.severity), finding.text);
        if (!finding.holes.empty()) {
            text += "      at";
            for (const Hole& hole : finding.holes) text += ' ' + toString(hole);
            text += '\n';
        }
        if (finding.mend) text += fmt::format("      mend: {}\n", finding.mend->text);
    }
    return text;
}

}  // namespace tiepoint::app
