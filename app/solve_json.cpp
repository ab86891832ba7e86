#include "app/finding_report.h"
#include "app/net_list.h"
#include "app/settings.h"
#include "app/solve_report.h"
#include "app/walk_report.h"
#include "core/bench/describe.h"
#include "core/meter/meter.h"
#include "core/snapshot/element_present.h"
#include "core/snapshot/pinned_value.h"

#include <fmt/format.h>

#include <cmath>
#include <limits>

namespace tiepoint::app {
namespace {

using SolveForm = JsonWriter::Form;

/// Writes one snapshot; holds what all pieces need.
class SolveJson {
public:
    SolveJson(const Snapshot& snapshot, JsonWriter& json)
        : snapshot_(snapshot),
          layout_(*snapshot.layout),
          bench_(*layout_.bench),
          json_(json) {}

    void writeNets();
    void writeParts();
    void writeJumpers();
    void writePinned();
    void writeSurroundings();
    void writeCheck();

private:
    void writePart(int part);
    void writeModelValues(int part);
    void writeLeadValues(int part);
    void writeReading(int part);
    void writeCondition(Condition condition);
    /// The figure, or nothing where there is no solution.
    double shown(double figure) const {
        return snapshot_.status() == Status::None ? std::numeric_limits<double>::quiet_NaN() : figure;
    }

    const Snapshot& snapshot_;
    const Layout& layout_;
    const Bench& bench_;
    JsonWriter& json_;
    int nextElement_ = 0;  ///< elements lie in the order of the parts
};

void SolveJson::writeNets() {
    json_.key("nets").beginArray();
    int id = 0;
    for (const NetMembers& members : netMembers(layout_)) {
        const bool solved = snapshot_.status() == Status::Solved;
        const double voltage =
            solved ? snapshot_.solution.netVoltage[members.net] : std::numeric_limits<double>::quiet_NaN();
        json_.beginObject(SolveForm::Row).field("id", id++).field("voltage", voltage);
        json_.field("floating", solved && std::isnan(voltage));
        writeMembers(json_, members);
        json_.endObject();
    }
    json_.endArray();
}

void SolveJson::writeParts() {
    json_.key("parts").beginObject();
    for (int part = 0; part < static_cast<int>(bench_.parts.size()); ++part) writePart(part);
    json_.endObject();
}

void SolveJson::writePart(int part) {
    const Part& content = bench_.parts[part];
    json_.key(content.id).beginObject().field("kind", content.kind->name);
    writeSettings(json_, content);
    writeModelValues(part);
    writeLeadValues(part);
    writeCondition(content.condition);
    json_.field("power", shown(snapshot_.partPower[part]));
    if (content.kind->emitsLight) json_.field("brightness", shown(snapshot_.brightness(part)));
    writeReading(part);
    json_.endObject();
}

/// Only of what is broken.
void SolveJson::writeCondition(Condition condition) {
    if (condition != Condition::Sound) json_.field("condition", kConditionNames[static_cast<std::size_t>(condition)]);
}

/// Of a meter: its display, and the figure behind it (null where it shows words).
void SolveJson::writeReading(int part) {
    const auto reading = meterReading(snapshot_, part);
    if (!reading) return;
    json_.key("reading")
        .beginObject(SolveForm::Row)
        .field("text", reading->text())
        .field("quantity", reading->quantity);
    json_.field("value", reading->value).field("beeps", reading->beeps);
    if (!reading->why.empty()) json_.field("why", reading->why);
    json_.endObject();
}

/// One element's constants stand under their own names; those of several elements tell which by "from-to.".
void SolveJson::writeModelValues(int part) {
    const auto elements = snapshot_.solution.elements();
    const PartKind& kind = *bench_.parts[part].kind;
    json_.key("model").beginObject(SolveForm::Row);
    for (; nextElement_ < elements.size() && elements[nextElement_].part == part; ++nextElement_) {
        const ElementState element = elements[nextElement_];
        const ElementSpec& spec = kind.model[element.spec];
        if (!isElementPresent(bench_.parts[part], spec)) continue;
        if (!element.closed && !spec.reads.empty())
            continue;  // of an instrument only what the dial has put in was solved
        const std::string prefix = kind.model.size() == 1 ? "" : fmt::format("{}-{}.", spec.from(), spec.to());
        for (const auto& [name, constant] : element.constants) json_.field(prefix + name, constant);
    }
    json_.endObject();
}

void SolveJson::writeLeadValues(int part) {
    const PartKind& kind = *bench_.parts[part].kind;
    json_.key("leads").beginObject();
    for (int lead = 0; lead < static_cast<int>(kind.leads.size()); ++lead) {
        const int index = layout_.leadIndex(part, lead);
        json_.key(kind.leads[lead].name).beginObject(SolveForm::Row);
        json_.field("voltage", snapshot_.leadVoltage(index));
        json_.field("current", shown(snapshot_.leadCurrent[index])).endObject();
    }
    json_.endObject();
}

void SolveJson::writeJumpers() {
    json_.key("jumpers").beginObject();
    for (int jumper = 0; jumper < static_cast<int>(bench_.jumpers.size()); ++jumper) {
        json_.key(bench_.jumpers[jumper].id).beginObject(SolveForm::Row);
        json_.field("current", shown(snapshot_.jumperCurrent(jumper)));
        writeCondition(bench_.jumpers[jumper].condition);
        json_.endObject();
    }
    json_.endObject();
}

/// Only where something is pinned.
void SolveJson::writePinned() {
    if (bench_.pinned.empty()) return;
    json_.key("pinned").beginObject();
    for (const PinnedReading& reading : bench_.pinned) {
        const PinnedValue read = pinnedValue(snapshot_, reading);
        json_.key(reading.id).beginObject(SolveForm::Row).field("of", measurandInWords(bench_, reading.of));
        json_.field("value", read.value).field("unit", read.unit).endObject();
    }
    json_.endObject();
}

/// Only where the bench says them.
void SolveJson::writeSurroundings() {
    if (!bench_.surroundings) return;
    const Surroundings& around = snapshot_.inputs->surroundings;
    json_.key("surroundings").beginObject(SolveForm::Row);
    json_.field("light", around.lightLux).field("temperature", around.temperatureCelsius);
    const auto held = [&](std::string_view name, const std::optional<HeldOver>& over, std::string_view figure) {
        if (!over) return;
        json_.key(name)
            .beginObject()
            .field("x", over->at.x)
            .field("y", over->at.y)
            .field(figure, over->there)
            .endObject();
    };
    held("torch", around.torch, "light");
    held("hand", around.hand, "temperature");
    json_.endObject();
}

void SolveJson::writeCheck() {
    json_.key("check").beginObject(SolveForm::Row);
    json_.field("kirchhoffWorst", shown(snapshot_.solution.kirchhoffWorst));
    json_.field("powerBalance", shown(snapshot_.solution.powerBalance)).endObject();
}

}  // namespace

std::string_view statusName(Status status) {
    switch (status) {
        case Status::Solved:
            return "solved";
        case Status::Off:
            return "off";
        case Status::None:
            return "none";
    }
    return {};
}

std::string solveJson(const Snapshot& snapshot, const Report& report, std::optional<int> walked) {
    JsonWriter json;
    SolveJson pieces(snapshot, json);
    json.beginObject().field("title", snapshot.layout->bench->title).field("status", statusName(snapshot.status()));
    pieces.writeNets();
    pieces.writeParts();
    pieces.writeJumpers();
    pieces.writePinned();
    pieces.writeSurroundings();
    if (walked) writeWalk(json, snapshot, *walked);
    pieces.writeCheck();
    writeSettled(json, snapshot, true);
    writeFindings(json, *snapshot.layout->bench, report);
    json.endObject();
    return json.take();
}

}  // namespace tiepoint::app
