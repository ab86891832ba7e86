// A jumper in the wrong socket of a supply, or two in each other's.

#include "core/slips/kinds/kinds.h"
#include "core/slips/search.h"
#include "core/slips/slip_words.h"

#include <map>

namespace tiepoint {
namespace {

struct PluggedEnd {
    int jumper = 0, end = 0;
};
using Taken = std::map<Socket, PluggedEnd>;

Taken socketsTaken(const Bench& bench) {
    Taken taken;
    for (int jumper = 0; jumper < static_cast<int>(bench.jumpers.size()); ++jumper) {
        for (int end = 0; end < 2; ++end) {
            const auto& ends = bench.jumpers[static_cast<std::size_t>(jumper)].ends;
            if (const auto* socket = std::get_if<Socket>(&ends[static_cast<std::size_t>(end)]))
                taken.emplace(*socket, PluggedEnd{jumper, end});
        }
    }
    return taken;
}

void offerOthers(SlipSearch& search, const Taken& taken, const Socket& socket, const PluggedEnd& at, int away) {
    const Bench& bench = search.bench();
    const Part& part = *bench.findPart(socket.part);
    for (int lead = 0; lead < static_cast<int>(part.leads.size()); ++lead) {
        if (lead == socket.lead || !part.kind->leads[static_cast<std::size_t>(lead)].socket) continue;
        const Socket to{socket.part, lead};
        BenchChange change;
        change.ends.push_back({bench.jumpers[static_cast<std::size_t>(at.jumper)].id, at.end, to});
        if (const auto other = taken.find(to); other != taken.end())
            change.ends.push_back(
                {bench.jumpers[static_cast<std::size_t>(other->second.jumper)].id, other->second.end, socket});
        search.offer(std::move(change), away);
    }
}

void searchWrongSocket(SlipSearch& search) {
    const Taken taken = socketsTaken(search.bench());
    if (taken.empty()) return;
    search.eachJumper([&](int jumper, int away) {
        for (int end = 0; end < 2; ++end) {
            const auto& ends = search.ground().jumper(jumper).ends;
            if (const auto* socket = std::get_if<Socket>(&ends[static_cast<std::size_t>(end)]))
                offerOthers(search, taken, *socket, {jumper, end}, away);
        }
    });
}

}  // namespace

const SlipKind kWrongSocket{"wrong-socket", 2,       "slip.wrong-socket.seen", true, searchWrongSocket,
                            misplacedWords, putWords};

}  // namespace tiepoint
