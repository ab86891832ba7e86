// tiepoint parts [KIND]: the catalogue.

#include "app/commands.h"
#include "app/kind_report.h"
#include "app/output.h"

#include <fmt/format.h>

#include <vector>

namespace tiepoint::app {
namespace {

struct PartsOptions {
    std::string kind;
    bool json = false;
};

std::string partsAsJson(const std::vector<const PartKind*>& kinds) {
    JsonWriter json;
    json.beginObject().key("parts").beginArray();
    for (const PartKind* kind : kinds) writeKind(json, *kind);
    json.endArray().endObject();
    return json.take();
}

/// One line a kind for the whole catalogue; everything about a single one.
std::string partsAsText(const std::vector<const PartKind*>& kinds) {
    if (kinds.size() == 1) return kindText(*kinds.front());
    std::string text;
    for (const PartKind* kind : kinds) text += fmt::format("{:<14} {}\n", kind->name, kind->help.what);
    return text;
}

int runParts(const PartsOptions& options) {
    std::vector<const PartKind*> kinds;
    if (options.kind.empty()) {
        for (const PartKind& kind : catalogue()) kinds.push_back(&kind);
    } else {
        kinds.push_back(findKind(options.kind));
        if (kinds.front() == nullptr) return complain(fmt::format("KIND: the catalogue has no \"{}\"", options.kind));
    }
    print(options.json ? partsAsJson(kinds) : partsAsText(kinds));
    return kExitGood;
}

}  // namespace

Action declareParts(CLI::App& parser) {
    auto options = std::make_shared<PartsOptions>();
    parser.add_option("KIND", options->kind, "One kind, such as led; all of them without it");
    parser.add_flag("--json", options->json, "Write JSON");
    return [options] { return runParts(*options); };
}

}  // namespace tiepoint::app
