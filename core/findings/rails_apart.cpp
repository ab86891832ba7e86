// Top and bottom rail of one sign, or the rails of two boards, aren't tied together while a part needs both.

#include "core/findings/joining.h"
#include "core/findings/rules.h"

#include <fmt/format.h>

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
                suspectGap(
                    examination, rails[a], rails[b],
                    fmt::format(
                        "The rails {} and {} have the same sign but are not joined (open circuit: no complete path).",
                        bench.boards.size() == 1 ? std::string(lineName(rails[a].line))
                                                 : fmt::format("{} of {}", lineName(rails[a].line), rails[a].board),
                        bench.boards.size() == 1 ? std::string(lineName(rails[b].line))
                                                 : fmt::format("{} of {}", lineName(rails[b].line), rails[b].board)),
                    found);
            }
        }
    }
    return found;
}

}  // namespace tiepoint
