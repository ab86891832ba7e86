// tiepoint why FILE PART: why a part is dark, so dim or so hot, and what would help.

#include "app/bench_input.h"
#include "app/commands.h"
#include "app/drawer_option.h"
#include "app/edit_json.h"
#include "app/output.h"
#include "core/findings/reveal.h"
#include "core/why/explain.h"

#include <fmt/format.h>

namespace tiepoint::app {
namespace {

struct WhyOptions {
    BenchInput input;
    std::string part;
    DrawerOption drawer;
    bool json = false;
};

void writeCause(JsonWriter& json, const Cause& cause) {
    json.beginObject().field("text", cause.text).texts("parts", cause.parts);
    std::vector<std::string> holes;
    for (const Hole& hole : cause.holes) holes.push_back(toString(hole));
    json.texts("holes", holes).field("missingLink", cause.missingLink).endObject();
}

std::string whyAsJson(const Bench& bench, const Answer& answer) {
    JsonWriter json;
    json.beginObject().field("title", bench.title).field("part", answer.part).field("question", answer.question);
    json.key("causes").beginArray();
    for (const Cause& cause : answer.chain) writeCause(json, cause);
    json.endArray().key("figures").beginObject(JsonWriter::Form::Row);
    for (const auto& [name, figure] : answer.figures) json.field(name, figure);
    json.endObject().key("remedies").beginArray();
    for (const Remedy& remedy : answer.remedies) {
        json.beginObject().field("text", remedy.text).field("outcome", remedy.outcome).texts("hold", remedy.held);
        writeEdit(json, bench, remedy.edit);
        json.endObject();
    }
    json.endArray().endObject();
    return json.take();
}

std::string whyAsText(const Answer& answer) {
    std::string text = answer.question + '\n';
    for (const Cause& cause : answer.chain)
        text += fmt::format("  {}{}\n", cause.missingLink ? "Missing link: " : "", cause.text);
    for (const Remedy& remedy : answer.remedies)
        text += fmt::format("  Try: {}. Then {}.\n", remedy.text, remedy.outcome);
    return text;
}

int runWhy(const WhyOptions& options) {
    const auto bench = options.input.read();
    if (!bench) return complain(bench.error());
    const auto inputs = options.input.inputsFor(**bench);
    if (!inputs) return complain(inputs.error());
    const int part = (*bench)->partIndex(options.part);
    if (part < 0) {
        const bool jumper = (*bench)->jumperIndex(options.part) >= 0;
        const char* reason = jumper ? "{}: a jumper only joins; ask a part" : "{}: the bench has no part of that id";
        return complain(
            Error{ErrorKind::Reference, fmt::format(fmt::runtime(reason), options.part), {}, options.input.file});
    }
    const auto drawer = options.drawer.read();
    if (!drawer) return complain(drawer.error());
    if (isLocked(**bench) && !answersWhy(revealOf(**bench))) {
        return complain(
            Error{ErrorKind::Range,
                  fmt::format("this bench is locked and shows no more than {}", revealWords(revealOf(**bench))),
                  {"/reveal", 0, 0},
                  options.input.file});
    }
    const auto snapshot = evaluate(*bench, *inputs);
    Answer answer = explain(*snapshot, part, *drawer);
    if (!mayReveal(**bench, Reveal::Mend)) answer.remedies.clear();
    print(options.json ? whyAsJson(**bench, answer) : whyAsText(answer));
    return snapshot->status() == Status::None ? kExitBad : kExitGood;
}

}  // namespace

Action declareWhy(CLI::App& parser) {
    auto options = std::make_shared<WhyOptions>();
    options->input.declareFile(parser);
    parser.add_option("PART", options->part, "The id of the part to ask: D1")->required();
    options->input.declareHold(parser);
    options->drawer.declare(parser);
    parser.add_flag("--json", options->json, "Write JSON");
    return [options] { return runWhy(*options); };
}

}  // namespace tiepoint::app
