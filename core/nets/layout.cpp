#include "core/nets/layout.h"

#include "core/base/disjoint_sets.h"
#include "core/bench/table.h"

#include <algorithm>
#include <unordered_map>

namespace tiepoint {
namespace {

// Weights of the flow. Only their ratios matter: they say how parallel metal shares a current.
constexpr double kWireOhmPerMm = 52.96e-6;  // 22 AWG copper at 20 C, computed from its diameter and 0.017241 ohm mm2/m
constexpr double kContactOhm = 20e-3;  // one lead in one clip: a figure of our own within the usual 10 to 50 milliohm
constexpr double kClipOhmPerPitch = 0.3e-3;  // phosphor-bronze spring, about 1 mm2; from memory
constexpr double kLegOhm = 1e-3;             // a leg from its clip to the middle of the part; from memory

constexpr int kBoardsOfNarrowIndices = 256;

class LayoutBuilder {
public:
    explicit LayoutBuilder(std::shared_ptr<const Bench> bench) : layout_(std::make_shared<Layout>()), bench_(*bench) {
        layout_->bench = std::move(bench);
    }

    std::shared_ptr<const Layout> build() {
        numberHoles();
        numberLeads();
        joinMetal();
        makeJoints();
        makeStripPieces();
        makeJumperPieces();
        makeBridges();
        return layout_;
    }

private:
    void numberHoles() {
        Layout& layout = *layout_;
        int holes = 0, strips = 0;
        for (const Board& board : bench_.boards) {
            boardIndex_.emplace(board.id, static_cast<int>(layout.boardFirstHole.size()));
            layout.boardFirstHole.push_back(holes);
            layout.boardFirstStrip.push_back(strips);
            holes += board.kind->holeCount();
            strips += board.kind->stripCount(board.rails);
        }
        layout.boardFirstHole.push_back(holes);
        layout.boardFirstStrip.push_back(strips);
        layout.stripOfHole.resize(static_cast<std::size_t>(holes));
        for (std::size_t b = 0; b < bench_.boards.size(); ++b) numberStrips(static_cast<int>(b));
    }

    void numberStrips(int b) {
        const Board& board = bench_.boards[b];
        for (int line = 0; line < kRowCount + kRailCount; ++line) {
            const Line at = static_cast<Line>(line);
            for (int number = 1; board.kind->has(at, number); ++number) {
                layout_->stripOfHole[layout_->boardFirstHole[b] + board.kind->holeIndex(at, number)] =
                    layout_->boardFirstStrip[b] + board.kind->stripIndex(board.rails, at, number);
            }
        }
    }

    int holeIndex(const Hole& hole) const {
        const int board = boardIndex_.at(hole.board);
        return layout_->boardFirstHole[board] + bench_.boards[board].kind->holeIndex(hole.line, hole.number);
    }

    // Leads, and the element of the union-find that each is: its strip, or one of its own past the strips.
    void numberLeads() {
        Layout& layout = *layout_;
        int own = layout.boardFirstStrip.back();
        for (std::size_t p = 0; p < bench_.parts.size(); ++p) {
            const Part& part = bench_.parts[p];
            partIndex_.emplace(part.id, static_cast<int>(p));
            layout.firstLead.push_back(layout.leadCount());
            const int untouched = untouchedLead(part);
            for (std::size_t lead = 0; lead < part.leads.size(); ++lead) {
                const auto& hole = part.leads[lead];
                layout.holeOfLead.push_back(hole ? holeIndex(*hole) : -1);
                const bool touches = hole && static_cast<int>(lead) != untouched;
                touches_.push_back(touches);
                elementOfLead_.push_back(touches ? layout.stripOfHole[layout.holeOfLead.back()] : own++);
            }
        }
        layout.firstLead.push_back(layout.leadCount());
        elementCount_ = own;
    }

    int leadOfSocket(const Socket& socket) const { return layout_->leadIndex(partIndex_.at(socket.part), socket.lead); }
    int elementOf(const JumperEnd& end) const {
        if (const Hole* hole = std::get_if<Hole>(&end)) return layout_->stripOfHole[holeIndex(*hole)];
        return elementOfLead_[leadOfSocket(std::get<Socket>(end))];
    }

    void joinMetal() {
        std::vector<std::pair<int, int>> joins;
        for (const Jumper& jumper : bench_.jumpers) {
            if (jumper.condition != Condition::Sound) continue;
            joins.emplace_back(elementOf(jumper.ends[0]), elementOf(jumper.ends[1]));
        }
        for (std::size_t p = 0; p < bench_.parts.size(); ++p) {
            const int first = layout_->firstLead[p];
            for (const auto& group : bench_.parts[p].kind->joined) {
                for (std::size_t i = 1; i < group.size(); ++i) {
                    joins.emplace_back(elementOfLead_[first + group[0]], elementOfLead_[first + group[i]]);
                }
            }
        }
        const bool narrow = bench_.boards.size() <= kBoardsOfNarrowIndices && elementCount_ < UINT16_MAX;
        const std::vector<int> netOf = narrow ? netsOf<std::uint16_t>(joins) : netsOf<std::uint32_t>(joins);
        Layout& layout = *layout_;
        const int strips = layout.boardFirstStrip.back();
        layout.netOfStrip.assign(netOf.begin(), netOf.begin() + strips);
        for (const int element : elementOfLead_) layout.netOfLead.push_back(netOf[element]);
        layout.netUsed.assign(static_cast<std::size_t>(layout.netCount), 0);
    }

    template <class Index>
    std::vector<int> netsOf(const std::vector<std::pair<int, int>>& pairs) {
        std::vector<std::pair<Index, Index>> joins;
        joins.reserve(pairs.size());
        for (const auto& [a, b] : pairs) joins.emplace_back(static_cast<Index>(a), static_cast<Index>(b));
        std::vector<Index> netOf(static_cast<std::size_t>(elementCount_));
        layout_->netCount = static_cast<int>(numberSets<Index>(joins, netOf));
        return {netOf.begin(), netOf.end()};
    }

    int addJoint(int hole, int lead, bool hub, int net) {
        layout_->joints.push_back({.hole = hole, .lead = lead, .hub = hub, .net = net});
        return static_cast<int>(layout_->joints.size()) - 1;
    }

    int jointAtHole(int hole, int lead) {
        int& joint = layout_->jointOfHole[hole];
        if (joint < 0) joint = addJoint(hole, lead, false, layout_->netOfHole(hole));
        return joint;
    }

    void makeJoints() {
        Layout& layout = *layout_;
        layout.jointOfHole.assign(layout.stripOfHole.size(), -1);
        for (int lead = 0; lead < layout.leadCount(); ++lead) {
            const int hole = layout.holeOfLead[lead];
            layout.jointOfLead.push_back(touches_[lead] ? jointAtHole(hole, lead)
                                                        : addJoint(-1, lead, false, layout.netOfLead[lead]));
            if (hole < 0) continue;
            if (!touches_[lead]) jointAtHole(hole, -1);
            layout.netUsed[layout.netOfHole(hole)] = 1;
        }
        for (const Jumper& jumper : bench_.jumpers) {
            std::array<int, 2> joints{};
            for (std::size_t e = 0; e < 2; ++e) {
                const Hole* hole = std::get_if<Hole>(&jumper.ends[e]);
                joints[e] = hole ? jointAtHole(holeIndex(*hole), -1)
                                 : layout.jointOfLead[leadOfSocket(std::get<Socket>(jumper.ends[e]))];
                layout.netUsed[layout.joints[joints[e]].net] = 1;
            }
            layout.jumperJoints.push_back(joints);
        }
    }

    int addPiece(PieceKind kind, int from, int to, double ohm, int owner) {
        layout_->pieces.push_back({.kind = kind, .from = from, .to = to, .ohm = ohm, .owner = owner});
        return static_cast<int>(layout_->pieces.size()) - 1;
    }

    // Holes of one strip are met in order along it, so one pass that remembers the last joint of each strip finds all neighbours.
    void makeStripPieces() {
        Layout& layout = *layout_;
        std::vector<int> lastJoint(layout.netOfStrip.size(), -1);
        for (std::size_t hole = 0; hole < layout.jointOfHole.size(); ++hole) {
            const int joint = layout.jointOfHole[hole];
            if (joint < 0) continue;
            int& last = lastJoint[layout.stripOfHole[hole]];
            if (last >= 0) {
                const int from = layout.joints[last].hole;
                const double pitches = static_cast<double>(static_cast<int>(hole) - from);
                addPiece(PieceKind::Strip, last, joint, pitches * kClipOhmPerPitch, layout.stripOfHole[hole]);
            }
            last = joint;
        }
    }

    void makeJumperPieces() {
        const bool sockets = std::ranges::any_of(bench_.jumpers, [](const Jumper& jumper) {
            return jumper.ends[0].index() == 1 || jumper.ends[1].index() == 1;
        });
        const Table table = sockets ? placeThings(bench_) : Table{};
        for (std::size_t j = 0; j < bench_.jumpers.size(); ++j) {
            const Point a = endPointMm(table, bench_.jumpers[j].ends[0]);
            const Point b = endPointMm(table, bench_.jumpers[j].ends[1]);
            const double ohm = jumperLengthMm(a, b) * kWireOhmPerMm + 2 * kContactOhm;
            auto [from, to] = layout_->jumperJoints[j];
            // A broken wire hangs on the end that still touches and leads to nothing.
            const auto part = [&](int end) { return addJoint(-1, -1, false, layout_->joints[end].net); };
            const Condition condition = bench_.jumpers[j].condition;
            if (condition == Condition::DryContact)
                from = part(to);
            else if (condition != Condition::Sound)
                to = part(from);
            layout_->pieceOfJumper.push_back(addPiece(PieceKind::Jumper, from, to, ohm, static_cast<int>(j)));
        }
    }

    Point endPointMm(const Table& table, const JumperEnd& end) const {
        if (const Hole* hole = std::get_if<Hole>(&end)) {
            const Board& board = bench_.boards[boardIndex_.at(hole->board)];
            return board.cornerMm() + board.kind->holeMm(hole->line, hole->number);
        }
        const Socket& socket = std::get<Socket>(end);
        return table.parts[partIndex_.at(socket.part)].leadsMm[socket.lead];
    }

    void makeBridges() {
        Layout& layout = *layout_;
        layout.hubOfLead.assign(layout.holeOfLead.size(), -1);
        layout.pieceOfLead.assign(layout.holeOfLead.size(), -1);
        for (std::size_t p = 0; p < bench_.parts.size(); ++p) {
            for (const auto& group : bench_.parts[p].kind->joined) makeHub(layout.firstLead[p], group);
        }
    }

    void makeHub(int firstLead, const std::vector<int>& group) {
        Layout& layout = *layout_;
        const int representative = firstLead + group[0];
        const int hub = addJoint(-1, representative, true, layout.netOfLead[representative]);
        for (const int member : group) {
            const int lead = firstLead + member;
            layout.hubOfLead[lead] = hub;
            layout.pieceOfLead[lead] =
                addPiece(PieceKind::Bridge, layout.jointOfLead[lead], hub, kContactOhm + kLegOhm, lead);
        }
    }

    std::shared_ptr<Layout> layout_;
    const Bench& bench_;
    std::unordered_map<std::string_view, int> boardIndex_, partIndex_;
    std::vector<int> elementOfLead_;
    std::vector<char> touches_;  ///< by lead: it is in a hole and meets the clip there
    int elementCount_ = 0;
};

}  // namespace

int Layout::holeIndex(const Hole& hole) const {
    for (std::size_t b = 0; b < bench->boards.size(); ++b) {
        const Board& board = bench->boards[b];
        if (board.id != hole.board) continue;
        return board.kind->has(hole.line, hole.number)
                   ? boardFirstHole[b] + board.kind->holeIndex(hole.line, hole.number)
                   : -1;
    }
    return -1;
}

Hole Layout::holeAt(int index) const {
    const auto after = std::ranges::upper_bound(boardFirstHole, index);
    const auto b = static_cast<std::size_t>(after - boardFirstHole.begin()) - 1;
    const Board& board = bench->boards[b];
    const int local = index - boardFirstHole[b];
    for (int line = 0; line < kRowCount + kRailCount; ++line) {
        const Line at = static_cast<Line>(line);
        if (!board.kind->has(at, 1)) continue;
        // Along a line hole numbers grow evenly, so the place follows from the first and second hole.
        const int first = board.kind->holeIndex(at, 1);
        const int step = board.kind->holeIndex(at, 2) - first;
        const int number = (local - first) / step + 1;
        if (local >= first && (local - first) % step == 0 && board.kind->has(at, number)) return {board.id, at, number};
    }
    return {};
}

int Layout::partOfLead(int lead) const {
    return static_cast<int>(std::ranges::upper_bound(firstLead, lead) - firstLead.begin()) - 1;
}

std::shared_ptr<const Layout> buildLayout(std::shared_ptr<const Bench> bench) {
    return LayoutBuilder(std::move(bench)).build();
}

}  // namespace tiepoint
