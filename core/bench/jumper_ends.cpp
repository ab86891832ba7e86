#include "core/bench/jumper_ends.h"

#include "core/base/json_text.h"

#include <fmt/format.h>

namespace tiepoint {
namespace {

Result<JumperEnd> holeEnd(std::string_view text) {
    if (auto hole = parseHole(text)) return JumperEnd{std::move(*hole)};
    return Error{ErrorKind::Reference,
                 fmt::format("{} is no hole and no socket; they are written like A.e12 and PS1.GND2", inQuotes(text)),
                 {},
                 {}};
}

Result<JumperEnd> socketEnd(std::string_view text, std::string_view part, const PartKind& kind) {
    const std::size_t dot = text.find('.');
    const int lead = dot == std::string_view::npos ? -1 : kind.leadIndex(text.substr(dot + 1));
    if (lead >= 0 && kind.leads[lead].socket) return JumperEnd{Socket{std::string(part), lead}};
    const std::string message = lead < 0 ? fmt::format("a {} has no socket {}", kind.name, inQuotes(text))
                                         : fmt::format("{} is a lead, no socket; jumpers end in holes", inQuotes(text));
    return Error{ErrorKind::Reference, message, {}, {}};
}

}  // namespace

PartKinds kindsOf(const Bench& bench) {
    PartKinds kinds;
    for (const Part& part : bench.parts) kinds.emplace(part.id, part.kind);
    return kinds;
}

std::optional<Trouble> resolveEnds(UnresolvedJumper& jumper, const PartKinds& kinds) {
    for (std::size_t end = 0; end < 2; ++end) {
        const std::string_view text = jumper.ends[end];
        const auto owner = kinds.find(text.substr(0, text.find('.')));
        auto resolved = owner == kinds.end() ? holeEnd(text) : socketEnd(text, owner->first, *owner->second);
        if (!resolved) {
            return Trouble{resolved.error().kind, resolved.error().message, fmt::format("/ends/{}", end),
                           jumper.offsets[end]};
        }
        jumper.jumper.ends[end] = std::move(resolved).value();
    }
    return {};
}

std::string endText(const JumperEnd& end, const PartKinds& kinds) {
    if (const Hole* hole = std::get_if<Hole>(&end)) return jsonString(toString(*hole));
    const auto& socket = std::get<Socket>(end);
    return jsonString(socket.part + '.' + kinds.at(socket.part)->leads[socket.lead].name);
}

}  // namespace tiepoint
