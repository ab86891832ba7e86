// tiepoint nets FILE: which holes and leads are one net.

#include "app/bench_input.h"
#include "app/commands.h"
#include "app/finding_report.h"
#include "app/json_writer.h"
#include "app/net_list.h"
#include "app/output.h"
#include "core/base/printable.h"

#include <fmt/format.h>

namespace tiepoint::app {
namespace {

struct NetsOptions {
    BenchInput input;
    bool json = false;
};

std::string netsAsJson(const Layout& layout) {
    JsonWriter json;
    json.beginObject().field("title", layout.bench->title).key("nets").beginArray();
    int id = 0;
    for (const NetMembers& members : netMembers(layout)) {
        json.beginObject(JsonWriter::Form::Row).field("id", id++);
        writeMembers(json, members);
        json.endObject();
    }
    json.endArray().endObject();
    return json.take();
}

std::string netsAsText(const Layout& layout) {
    std::string text = fmt::format("{}\n", printable(layout.bench->title));
    int id = 0;
    for (const NetMembers& members : netMembers(layout))
        text += fmt::format("{:>4}   {}\n", id++, membersText(members));
    return text;
}

int runNets(const NetsOptions& options) {
    const auto bench = options.input.read();
    if (!bench) return complain(bench.error());
    if (const auto held = heldBackByHunt(**bench, options.input.file)) return complain(*held);
    const auto layout = buildLayout(*bench);
    print(options.json ? netsAsJson(*layout) : netsAsText(*layout));
    return kExitGood;
}

}  // namespace

Action declareNets(CLI::App& parser) {
    auto options = std::make_shared<NetsOptions>();
    options->input.declareFile(parser);
    parser.add_flag("--json", options->json, "Write JSON");
    return [options] { return runNets(*options); };
}

}  // namespace tiepoint::app
