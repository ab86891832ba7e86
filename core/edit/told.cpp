#include "core/edit/told.h"

#include "core/edit/holes.h"

#include <fmt/format.h>

#include <algorithm>

namespace tiepoint {
namespace {

constexpr std::size_t kMostTold = 3;  ///< nobody listens to the places of thirty things

std::string placeOfEnd(const Bench& bench, const JumperEnd& end) {
    if (const Hole* hole = std::get_if<Hole>(&end)) return holeName(bench, *hole);
    const Socket& socket = std::get<Socket>(end);
    const Part* part = bench.findPart(socket.part);
    if (!part) return socket.part;
    return fmt::format("socket {} of {}", part->kind->leads[static_cast<std::size_t>(socket.lead)].name, part->id);
}

std::string leadsInWords(const Bench& bench, const Part& part) {
    std::string words;
    for (std::size_t lead = 0; lead < part.leads.size(); ++lead) {
        const LeadSpec& spec = part.kind->leads[lead];
        if (spec.socket) continue;
        if (!words.empty()) words += ", ";
        words += part.leads[lead] ? fmt::format("{} in {}", spec.name, holeName(bench, *part.leads[lead]))
                                  : spec.name + " in no hole";
    }
    return words;
}

/// Its place without its id.
std::string whereInWords(const Bench& bench, const std::string& id) {
    if (const Part* part = bench.findPart(id)) return leadsInWords(bench, *part);
    if (const Jumper* jumper = bench.findJumper(id))
        return fmt::format("from {} to {}", placeOfEnd(bench, jumper->ends[0]), placeOfEnd(bench, jumper->ends[1]));
    if (const Note* note = bench.findNote(id)) return "at " + holeName(bench, note->at);
    return {};
}

}  // namespace

std::string placeInWords(const Bench& bench, const std::string& id) {
    const std::string where = whereInWords(bench, id);
    return where.empty() ? std::string() : id + ": " + where;
}

std::string toldOf(const Bench& bench, const std::vector<std::string>& ids, const std::string& what) {
    if (ids.size() == 1) {
        const std::string where = whereInWords(bench, ids.front());
        return where.empty() ? fmt::format("{} {}", ids.front(), what)
                             : fmt::format("{} {}: {}", ids.front(), what, where);
    }
    std::string words = fmt::format("{} things {}", ids.size(), what);
    const std::size_t told = std::min(ids.size(), kMostTold);
    for (std::size_t i = 0; i < told; ++i) {
        const std::string place = placeInWords(bench, ids[i]);
        if (!place.empty()) words += "; " + place;
    }
    return ids.size() > told ? words + fmt::format("; and {} more", ids.size() - told) : words;
}

}  // namespace tiepoint
