#include "core/findings/trial.h"

#include "core/base/capital.h"
#include "core/base/stopping.h"
#include "core/edit/holes.h"
#include "core/edit/placement.h"
#include "core/words/words.h"

namespace tiepoint {
namespace {

/// The row beside a rail, for rails that a row lies beside.
std::optional<Line> rowBeside(Line rail) {
    if (rail == Line::TopMinus) return Line::A;
    if (rail == Line::BottomPlus) return Line::J;
    return std::nullopt;
}

Line railBesideRail(Line rail) {
    switch (rail) {
        case Line::TopPlus:
            return Line::TopMinus;
        case Line::TopMinus:
            return Line::TopPlus;
        case Line::BottomPlus:
            return Line::BottomMinus;
        default:
            return Line::BottomPlus;
    }
}

/// The rail hole over a column, where there is one.
std::optional<int> railNumberOver(const BoardKind& kind, int column) {
    for (int number = 1; number <= kind.railHoles; ++number) {
        if (kind.railColumn(number) == column) return number;
    }
    return std::nullopt;
}

/// Holes in the strips that a slip of the hand reaches from a hole.
std::vector<Hole> slipsFrom(const Bench& bench, const Hole& hole) {
    const Board& board = *bench.findBoard(hole.board);
    std::vector<Hole> reached;
    const auto add = [&](Line line, int number) {
        if (board.kind->has(line, number)) reached.push_back({hole.board, line, number});
    };
    if (isRail(hole.line)) {
        add(railBesideRail(hole.line), hole.number);
        if (const auto row = rowBeside(hole.line)) add(*row, board.kind->railColumn(hole.number));
        return reached;
    }
    add(hole.line, hole.number - 1);
    add(hole.line, hole.number + 1);
    add(hole.line <= Line::E ? Line::F : Line::E, hole.number);
    for (const Line rail : {Line::TopMinus, Line::BottomPlus}) {
        if (rowBeside(rail) != hole.line) continue;
        if (const auto number = railNumberOver(*board.kind, hole.number)) add(rail, *number);
    }
    return reached;
}

/// Slips into strips that something is plugged into, each with the free hole nearest to the one left.
template <class Make>
void addSlips(const Examination& examination, const Hole& from, Make make, std::vector<Move>& moves) {
    const Layout& layout = examination.layout();
    const int fromNet = layout.netOfHole(layout.holeIndex(from));
    for (const Hole& slip : slipsFrom(examination.bench(), from)) {
        stopIfAsked();
        const int toNet = layout.netOfHole(layout.holeIndex(slip));
        if (toNet == fromNet || !layout.netUsed[toNet]) continue;
        const auto to = nearestFreeInStrip(examination.around(), slip);
        if (!to) continue;
        Move move = make(*to);
        move.from = from;
        move.to = *to;
        move.fromNet = fromNet;
        move.toNet = toNet;
        moves.push_back(std::move(move));
    }
}

bool isAloneInStrip(const Layout& layout, const Hole& hole) {
    const int strip = layout.stripOfHole[layout.holeIndex(hole)];
    int count = 0;
    for (const Joint& joint : layout.joints) count += joint.hole >= 0 && layout.stripOfHole[joint.hole] == strip;
    return count == 1;
}

void addShifts(const Examination& examination, int index, std::vector<Move>& moves) {
    const Part& part = examination.part(index);
    const Layout& layout = examination.layout();
    for (const int columns : {-1, 1}) {
        const auto moved = shifted(examination.bench(), part, columns, 0);
        if (!moved || !part.leads[0]) continue;
        Move move;
        move.id = move.what = part.id;
        move.from = *part.leads[0];
        move.to = *moved->leads[0];
        move.fromNet = layout.netOfHole(layout.holeIndex(move.from));
        move.toNet = layout.netOfHole(layout.holeIndex(move.to));
        move.edit = {say("history.move", {{"thing", part.id}}), {ReplacePart{*moved}}};
        moves.push_back(std::move(move));
    }
}

}  // namespace

std::vector<Move> movesOfPart(const Examination& examination, int index) {
    const Part& part = examination.part(index);
    std::vector<Move> moves;
    if (part.kind->package->reach == Reach::Rigid) {
        addShifts(examination, index, moves);
        return moves;
    }
    for (int lead = 0; lead < static_cast<int>(part.leads.size()); ++lead) {
        if (!part.leads[lead]) continue;
        const int net = examination.layout().netOfLead[examination.layout().leadIndex(index, lead)];
        const auto make = [&](const Hole& to) {
            Part moved = part;
            moved.leads[lead] = to;
            Move move;
            move.id = part.id;
            move.what = leadInWords(part, lead);
            move.wasAlone = !examination.meetsOthers(net, index);
            move.edit = {say("history.move", {{"thing", part.id}}), {ReplacePart{std::move(moved)}}};
            return move;
        };
        addSlips(examination, *part.leads[lead], make, moves);
    }
    return moves;
}

std::vector<Move> movesOfJumper(const Examination& examination, int index) {
    const Jumper& jumper = examination.bench().jumpers[index];
    std::vector<Move> moves;
    for (std::size_t end = 0; end < jumper.ends.size(); ++end) {
        const Hole* from = std::get_if<Hole>(&jumper.ends[end]);
        if (from == nullptr) continue;
        const auto make = [&](const Hole& to) {
            Jumper moved = jumper;
            moved.ends[end] = to;
            Move move;
            move.id = jumper.id;
            move.what = say("finding.lead.end", {{"jumper", jumper.id}});
            move.wasAlone = isAloneInStrip(examination.layout(), *from);
            move.edit = {say("history.move", {{"thing", jumper.id}}), {ReplaceJumper{std::move(moved)}}};
            return move;
        };
        addSlips(examination, *from, make, moves);
    }
    return moves;
}

Edit exchangeLeads(const Part& part) {
    Part turnedRound = part;
    std::swap(turnedRound.leads.front(), turnedRound.leads.back());
    return {say("history.turn", {{"thing", part.id}}), {ReplacePart{std::move(turnedRound)}}};
}

std::string leadInWords(const Part& part, int lead) {
    const std::string& name = part.kind->leads[lead].name;
    const bool isWord = name.size() > 2;  // "anode", "wiper"; else "1", "2b", "+"
    return say(isWord ? "finding.lead.named" : "finding.lead.leg", {{"lead", name}, {"part", part.id}});
}

std::string saidOf(std::string text, const Position& position) {
    if (position.words.empty()) return text;
    if (position.passes) return say("finding.when", {{"when", capitalised(position.words)}, {"sentence", text}});
    if (text.ends_with('.')) text.pop_back();
    return say("finding.while", {{"sentence", text}, {"position", position.words}});
}

}  // namespace tiepoint
