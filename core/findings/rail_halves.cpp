// The halves of a split rail aren't bridged, and a circuit needs both. The break in the printed line is the only clue on the board.

#include "core/edit/holes.h"
#include "core/findings/joining.h"
#include "core/findings/rules.h"
#include "core/words/words.h"

namespace tiepoint {
namespace {

constexpr Line kRails[] = {Line::TopPlus, Line::TopMinus, Line::BottomPlus, Line::BottomMinus};

struct Break {
    Hole left, right;
};

/// The breaks of a board's rails between halves that are both in use and not joined.
std::vector<Break> breaksOf(const Layout& layout, const Board& board) {
    std::vector<Break> found;
    if (board.rails != Rails::Split || !board.kind->hasRails()) return found;
    const int half = board.kind->railHoles / 2;
    for (const Line rail : kRails) {
        const Break each{{board.id, rail, half}, {board.id, rail, half + 1}};
        const int left = layout.netOfHole(layout.holeIndex(each.left)),
                  right = layout.netOfHole(layout.holeIndex(each.right));
        if (left != right && layout.netUsed[left] && layout.netUsed[right]) found.push_back(each);
    }
    return found;
}

/// A circuit that runs over several breaks needs all of them bridged: one alone lights nothing.
void suspectAll(const Examination& examination, const Board& board, const std::vector<Break>& breaks,
                Suspicions& found) {
    Mend all{say("mend.bridgeRails", {{"board", board.id}}), {say("history.bridge"), {}}};
    auto bench = std::make_shared<const Bench>(examination.bench());
    Suspicion each;
    for (const Break& at : breaks) {
        const auto mend = jumperMend(*bench, at.left, at.right);
        if (!mend) return;
        all.edit.operations.push_back(mend->edit.operations.front());
        bench = std::make_shared<const Bench>(apply(*bench, mend->edit).value().bench);
        each.finding.holes.push_back(at.left);
        each.finding.holes.push_back(at.right);
    }
    each.finding.text = say("finding.rails.halves", {{"board", board.id}});
    each.finding.figures = {{"rails in halves", static_cast<double>(breaks.size())}};
    each.doubt = 1;
    each.proposals = {all};
    for (const int light : examination.darkLights()) {
        each.darkens = each.finding.parts = {examination.part(light).id};
        found.push_back(each);
    }
}

}  // namespace

Suspicions findRailHalves(const Examination& examination) {
    Suspicions found;
    if (examination.darkLights().empty()) return found;
    const Bench& bench = examination.bench();
    for (const Board& board : bench.boards) {
        const auto breaks = breaksOf(examination.layout(), board);
        for (const auto& [left, right] : breaks) {
            suspectGap(
                examination, left, right,
                say("finding.rails.half",
                    {{"rail", lineName(left.line)}, {"one", holeName(bench, left)}, {"other", holeName(bench, right)}}),
                found);
        }
        if (breaks.size() > 1) suspectAll(examination, board, breaks, found);
    }
    return found;
}

}  // namespace tiepoint
