#include "app/walk_report.h"

#include "core/bench/describe.h"
#include "core/why/walk_words.h"

#include <fmt/format.h>

namespace tiepoint::app {
namespace {

using WalkForm = JsonWriter::Form;

std::string_view endName(WalkEnd end) {
    switch (end) {
        case WalkEnd::Closed:
            return "closed";
        case WalkEnd::Off:
            return "off";
        case WalkEnd::NoSolution:
            return "no-solution";
        case WalkEnd::NoCurrent:
            return "no-current";
        case WalkEnd::Floating:
            return "floating";
    }
    return {};
}

/// The part or jumper that a step passes; empty along a strip or inside a part.
std::string thingOf(const Layout& layout, const WalkStep& step) {
    if (step.part >= 0) return layout.bench->parts[step.part].id;
    const Piece& piece = layout.pieces[step.piece];
    return piece.kind == PieceKind::Jumper ? layout.bench->jumpers[piece.owner].id : std::string();
}

void writeSteps(JsonWriter& json, const Layout& layout, const PotentialWalk& walk) {
    json.key("steps").beginArray();
    for (std::size_t i = 0; i < walk.steps.size(); ++i) {
        const WalkStep& step = walk.steps[i];
        json.beginObject(WalkForm::Row)
            .field("to", placeInWords(layout, walk.points[i + 1].joint))
            .field("voltage", walk.points[i + 1].volt);
        if (const std::string thing = thingOf(layout, step); !thing.empty())
            json.field(step.part >= 0 ? "part" : "jumper", thing);
        json.field("rise", step.volt).field("current", step.ampere).endObject();
    }
    json.endArray();
}

}  // namespace

void writeWalk(JsonWriter& json, const Snapshot& snapshot, int part) {
    const Layout& layout = *snapshot.layout;
    const PotentialWalk walk = walkPotential(snapshot, part);
    json.key("walk").beginObject().field("part", layout.bench->parts[part].id).field("end", endName(walk.end));
    if (walk.end == WalkEnd::Closed) {
        json.field("supply", layout.bench->parts[walk.supply].id);
        json.field("from", placeInWords(layout, walk.points.front().joint)).field("voltage", walk.points.front().volt);
        writeSteps(json, layout, walk);
        json.texts("divisions", divisionsInWords(snapshot, walk));
        double sum = 0;
        for (const WalkStep& step : walk.steps) sum += step.volt;
        json.field("sumOfRises", sum);
    }
    json.endObject();
}

std::string walkReport(const Snapshot& snapshot, int part) {
    const Layout& layout = *snapshot.layout;
    const PotentialWalk walk = walkPotential(snapshot, part);
    std::string text = fmt::format("\nVoltage around the loop of {}\n", describePart(layout.bench->parts[part]));
    if (walk.end != WalkEnd::Closed) return text + "  " + whyNoWalk(snapshot, walk, part) + '\n';
    text += fmt::format("  {:<12} {:>10}\n", placeInWords(layout, walk.points.front().joint),
                        walk.points.front().shown.text());
    for (std::size_t i = 0; i < walk.steps.size(); ++i) {
        const WalkStep& step = walk.steps[i];
        const std::string thing = thingOf(layout, step);
        const std::string rise = step.part < 0 ? "" : (step.shown.steps() > 0 ? " +" : " ") + step.shown.text();
        text += fmt::format("  {:<12} {:>10}", placeInWords(layout, walk.points[i + 1].joint),
                            walk.points[i + 1].shown.text());
        text += thing.empty() ? "\n" : fmt::format("   {}{}\n", thing, rise);
    }
    for (const std::string& sentence : divisionsInWords(snapshot, walk)) text += "  " + sentence + '\n';
    return text;
}

}  // namespace tiepoint::app
