#include "core/compare/counted_bench.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>
#include <utility>

namespace tiepoint {
namespace {

bool isMeterOnTable(const Part& part) { return standsOnTable(part) && !part.kind->isSupply; }

/// Gives out holes of strips, net by net.
class StripDealer {
public:
    explicit StripDealer(Bench& bench) : bench_(bench) {}

    /// A hole that is on the net.
    Hole holeOn(int net) {
        const auto [place, isNew] = open_.try_emplace(net, Open{});
        if (isNew || place->second.used == kHoles - 1) openStrip(place->second, isNew);
        return holeAt(place->second.strip, place->second.used++);
    }

private:
    static constexpr int kHoles = 5;
    struct Open {
        int strip = -1, used = 0;
    };

    /// A fresh strip for the net, tied to the one before by a jumper in the last hole there.
    void openStrip(Open& open, bool isFirst) {
        const int strip = nextStrip_++;
        if (!isFirst) {
            Jumper tie;
            tie.id = fmt::format("Tie{}", strip);
            tie.ends = {holeAt(open.strip, kHoles - 1), holeAt(strip, 0)};
            bench_.jumpers.push_back(std::move(tie));
        }
        open = {strip, isFirst ? 0 : 1};
    }

    Hole holeAt(int strip, int hole) {
        const BoardKind& kind = *findBoardKind("full");
        const int board = strip / (2 * kind.columns), onBoard = strip % (2 * kind.columns);
        while (std::ssize(bench_.boards) <= board) {
            Board next;
            next.id = fmt::format("Board{}", bench_.boards.size() + 1);
            next.kind = &kind;
            constexpr double kApart = 30;
            next.atY = kApart * static_cast<double>(bench_.boards.size());
            bench_.boards.push_back(std::move(next));
        }
        const int row = (onBoard % 2) * kHoles + hole;
        return {bench_.boards[static_cast<std::size_t>(board)].id, static_cast<Line>(row), 1 + onBoard / 2};
    }

    Bench& bench_;
    std::map<int, Open> open_;
    int nextStrip_ = 0;
};

}  // namespace

Bench withoutInstruments(const Bench& bench) {
    Bench kept = bench;
    std::set<std::string, std::less<>> gone;
    for (const Part& part : bench.parts)
        if (isMeterOnTable(part)) gone.insert(part.id);
    if (gone.empty()) return kept;
    std::erase_if(kept.parts, [&](const Part& part) { return gone.contains(part.id); });
    std::erase_if(kept.jumpers, [&](const Jumper& jumper) {
        return std::ranges::any_of(jumper.ends, [&](const JumperEnd& end) {
            const Socket* socket = std::get_if<Socket>(&end);
            return socket != nullptr && gone.contains(socket->part);
        });
    });
    std::erase_if(kept.pinned, [&](const PinnedReading& reading) {
        const auto measured = thingOf(reading.of);
        return !measured.empty() && kept.findPart(measured) == nullptr && kept.findJumper(measured) == nullptr;
    });
    return kept;
}

Bench benchForSolving(const Netlist& circuit) {
    Bench bench;
    bench.title = circuit.title;
    StripDealer dealer(bench);
    for (std::size_t p = 0; p < circuit.parts.size(); ++p) {
        Part part = circuit.parts[p];
        for (std::size_t lead = 0; lead < part.leads.size(); ++lead) {
            const int net = circuit.leads[p][lead];
            if (net < 0) continue;
            if (!part.kind->leads[lead].socket) {
                part.leads[lead] = dealer.holeOn(net);
                continue;
            }
            Jumper jumper;
            jumper.id = fmt::format("Plug{}", bench.jumpers.size());
            jumper.ends = {Socket{part.id, static_cast<int>(lead)}, dealer.holeOn(net)};
            bench.jumpers.push_back(std::move(jumper));
        }
        bench.parts.push_back(std::move(part));
    }
    if (bench.boards.empty()) bench.boards.push_back({"Board1", findBoardKind("full"), 0, 0, {}, {}, {}});
    return bench;
}

}  // namespace tiepoint
