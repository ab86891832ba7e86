// Top and bottom rail of one sign, or the rails of two boards, aren't tied together while a part needs both.

#include "core/findings/joining.h"
#include "core/findings/rules.h"
#include "core/words/words.h"

namespace tiepoint {
namespace {

/// The outermost holes of all rails of one sign: jumpers between rails are laid at the edge of a board.
std::vector<Hole> railsOfSign(const Bench& bench, Line top, Line bottom) {
    std::vector<Hole> rails;
    for (const Board& board : bench.boards) {
        if (!board.kind->hasRails()) continue;
        for (const Line line : {top, bottom}) {
            rails.push_back({board.id, line, 1});
            if (board.rails == Rails::Split) rails.push_back({board.id, line, board.kind->railHoles});
        }
    }
    return rails;
}

/// "top+", or "top+ of B" on several boards.
std::string railWords(const Bench& bench, const Hole& rail) {
    if (bench.boards.size() == 1) return std::string(lineName(rail.line));
    return say("finding.rails.of", {{"rail", lineName(rail.line)}, {"board", rail.board}});
}

}  // namespace

Suspicions findRailsApart(const Examination& examination) {
    Suspicions found;
    if (examination.darkLights().empty()) return found;
    const Bench& bench = examination.bench();
    for (const auto& rails :
         {railsOfSign(bench, Line::TopPlus, Line::BottomPlus), railsOfSign(bench, Line::TopMinus, Line::BottomMinus)}) {
        for (std::size_t a = 0; a < rails.size(); ++a) {
            for (std::size_t b = a + 1; b < rails.size(); ++b) {
                if (rails[a].board == rails[b].board && rails[a].line == rails[b].line)
                    continue;  // halves: another rule
                suspectGap(examination, rails[a], rails[b],
                           say("finding.rails.apart",
                               {{"one", railWords(bench, rails[a])}, {"other", railWords(bench, rails[b])}}),
                           found);
            }
        }
    }
    return found;
}

}  // namespace tiepoint
