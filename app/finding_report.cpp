#include "app/finding_report.h"

#include "app/edit_json.h"
#include "core/hunt/hidden_slip.h"
#include "core/time/settled.h"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>

namespace tiepoint::app {
namespace {

std::vector<std::string> namesOf(const std::vector<Hole>& holes) {
    std::vector<std::string> names;
    std::transform(holes.begin(), holes.end(), std::back_inserter(names),
                   [](const Hole& hole) { return toString(hole); });
    return names;
}

void writeMend(JsonWriter& json, const Bench& bench, const std::optional<Mend>& mend) {
    if (mend) {
        json.key("mend").beginObject().field("text", mend->text);
        writeEdit(json, bench, mend->edit);
        json.endObject();
    } else {
        json.key("mend").null();
    }
}

void writeFinding(JsonWriter& json, const Bench& bench, const Finding& finding) {
    json.beginObject();
    if (isPlaceOnly(finding))
        json.key("rule").null().key("severity").null();
    else
        json.field("rule", finding.rule).field("severity", severityName(finding.severity));
    json.texts("parts", finding.parts).texts("holes", namesOf(finding.holes)).field("text", finding.text);
    json.key("figures").beginObject(JsonWriter::Form::Row);
    for (const auto& [name, figure] : finding.figures) json.field(name, figure);
    json.endObject();
    writeMend(json, bench, finding.mend);
    json.key("alternatives").beginArray();
    for (const Alternative& each : finding.alternatives) {
        json.beginObject().field("text", each.text).texts("parts", each.parts).texts("holes", namesOf(each.holes));
        writeMend(json, bench, each.mend);
        json.endObject();
    }
    json.endArray().texts("consequences", finding.consequences);
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

std::optional<Error> heldBackByHunt(const Bench& bench, const std::string& file) {
    if (!isHunting(bench)) return std::nullopt;
    return Error{
        ErrorKind::Range,
        "this bench hides a slip that is to be found: its volts, currents and nets are told by the meter on the bench, "
        "not here",
        {"/hunt", 0, 0},
        file};
}

void writeFindings(JsonWriter& json, const Bench& bench, const Report& report) {
    json.key("findings").beginArray();
    for (const Finding& finding : report.findings) writeFinding(json, bench, finding);
    json.endArray();
}

void writeSettled(JsonWriter& json, const Snapshot& snapshot, bool envelopes) {
    if (!snapshot.settled) return;
    const Settled& settled = *snapshot.settled;
    json.key("settled").beginObject();
    json.field("ending", endingName(settled.ending)).field("second", settled.followedSecond);
    if (settled.ending == Ending::Repeating) json.field("period", settled.periodSecond);
    if (settled.capped) json.field("switchingHeldBack", true);
    const Layout& layout = *snapshot.layout;
    if (envelopes) json.key("leads").beginObject();
    for (int lead = 0; envelopes && lead < layout.leadCount(); ++lead) {
        const Part& part = layout.bench->parts[layout.partOfLead(lead)];
        const Envelope& ampere = settled.leadAmpere[lead];
        json.key(fmt::format("{}.{}", part.id, part.kind->leads[lead - layout.firstLead[layout.partOfLead(lead)]].name))
            .beginObject(JsonWriter::Form::Row)
            .field("least", ampere.least)
            .field("leastAt", ampere.leastSecond)
            .field("greatest", ampere.greatest)
            .field("greatestAt", ampere.greatestSecond)
            .field("mean", ampere.mean)
            .field("rootMeanSquare", ampere.rootMeanSquare)
            .endObject();
    }
    if (envelopes) json.endObject();
    json.endObject();
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
        for (const Alternative& each : finding.alternatives) {
            text += fmt::format("      or: {}\n", each.text);
            if (each.mend) text += fmt::format("        mend: {}\n", each.mend->text);
        }
        for (const std::string& each : finding.consequences) text += fmt::format("      so: {}\n", each);
    }
    return text;
}

}  // namespace tiepoint::app
