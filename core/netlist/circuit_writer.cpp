#include "core/base/file_io.h"
#include "core/base/json_text.h"
#include "core/bench/bench_file.h"
#include "core/netlist/circuit_file.h"

namespace tiepoint {
namespace {

/// {"id": "D1", "kind": "led", "values": {...}, "leads": {"anode": "lit", "cathode": "minus"}}: the line that a bench has for a part
/// without a place, and the nets of its leads.
std::string circuitLine(const Netlist& netlist, std::size_t part) {
    std::string line = partLine(netlist.parts[part]);
    std::string leads;
    for (std::size_t lead = 0; lead < netlist.leads[part].size(); ++lead) {
        const int net = netlist.leads[part][lead];
        if (net < 0) continue;
        leads += leads.empty() ? ", \"leads\": {" : ", ";
        leads += jsonString(netlist.parts[part].kind->leads[lead].name) + ": " + jsonString(netlist.nets[net]);
    }
    if (!leads.empty()) line.insert(line.size() - 1, leads + '}');
    return line;
}

}  // namespace

std::string writeNetlist(const Netlist& netlist) {
    std::string out =
        "{\n  \"format\": \"tiepoint-circuit\",\n  \"version\": 1,\n  \"title\": " + jsonString(netlist.title) +
        ",\n  \"parts\": [";
    for (std::size_t part = 0; part < netlist.parts.size(); ++part)
        out += (part == 0 ? "\n    " : ",\n    ") + circuitLine(netlist, part);
    out += netlist.parts.empty() ? "]" : "\n  ]";
    for (const auto& [name, json] : netlist.extras) out += ",\n  " + jsonString(name) + ": " + json;
    return out += "\n}\n";
}

Result<Done> writeNetlistFile(const Netlist& netlist, const std::filesystem::path& path) {
    return writeFileAtomically(path, writeNetlist(netlist));
}

}  // namespace tiepoint
