#include "core/diagram/block.h"

#include "core/bench/describe.h"
#include "core/diagram/turns.h"
#include "core/snapshot/throws.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>

namespace tiepoint {
namespace {

constexpr double kLine = 4;  // height of a line of words
constexpr double kBesideSymbol = 1.5;
constexpr double kHighFeature = 7;  // what reaches so high has its words below
constexpr double kBoxLead = 3, kBoxPitch = 6;

/// A switch's longest word.
std::string longestWord(const Part& part) {
    if (!isSwitch(*part.kind) || part.kind->isSupply || part.kind->family == "Meter") return {};
    std::string longest = "closed";
    for (const ValueSpec& state : part.kind->state) {
        for (const Choice& choice : state.choices) {
            if (choice.label.size() > longest.size()) longest = choice.label;
        }
    }
    return longest;
}

class BlockMaker {
public:
    BlockMaker(const Netlist& netlist, int part, const BlockWish& wish)
        : part_(netlist.parts[part]),
          nets_(netlist.leads[part]),
          wish_(wish),
          first_(firstOfTerminal(*part_.kind)) {
        block_.part = part;
        block_.symbol = symbolOf(*part_.kind, wish.style);
    }

    SheetBlock run() {
        if (block_.symbol) {
            choosePose();
            placeSymbol();
            turn();
            writeBeside();
        } else {
            makeBox();
        }
        // In the order of leads, however they turn: nodes of the graph are numbered by it.
        std::ranges::stable_sort(block_.ports, {}, &SheetPort::lead);
        for (InnerWire& wire : block_.inner) reach(wire.from), reach(wire.to);
        for (const SheetLead& lead : block_.leads) reach(lead.at);
        for (const Point& end : block_.openEnds) reach(end);
        const auto half = [](double x) { return std::ceil(x * 2) / 2; };
        block_.before = half(block_.before), block_.after = half(block_.after);
        block_.low = half(block_.low), block_.high = half(block_.high);
        return std::move(block_);
    }

private:
    bool isDown() const { return wish_.flow == SheetFlow::Downward; }

    int netOf(int lead) const {
        for (std::size_t other = 0; other < first_.size(); ++other) {
            if (first_[other] == first_[lead] && nets_[other] >= 0) return nets_[other];
        }
        return -1;
    }
    bool wantsAfter(int lead) const {
        for (std::size_t other = 0; other < first_.size(); ++other) {
            if (first_[other] == first_[lead] && nets_[other] >= 0) return wish_.isAfter[other] != 0;
        }
        return true;
    }

    /// The way a lead leaves, along and across.
    static Point way(const SymbolPose& pose, SymbolSide side) {
        constexpr std::array<Point, 4> kWays = {{{-1, 0}, {1, 0}, {0, -1}, {0, 1}}};
        SymbolPose about = pose;
        about.at = {};
        return about.place(kWays[static_cast<std::size_t>(side)]);
    }

    /// Upright on the sheet rather than turned by a quarter, where that costs no more bends.
    void choosePose() {
        std::vector<bool> turns{!wish_.beside};
        if (!wish_.beside && hasLeadsAllRound()) turns.push_back(false);
        double least = 1e9;
        for (const bool along : turns) {
            for (const bool flipY : {false, true}) {
                for (const bool flipX : {false, true}) {
                    const SymbolPose pose{{}, along, flipX, flipY};
                    if (const double cost = costOf(pose); cost < least) least = cost, block_.pose = pose;
                }
            }
        }
    }
    bool hasLeadsAllRound() const {
        const auto isOnAxis = [](const SymbolLead& lead) {
            return lead.side == SymbolSide::Start || lead.side == SymbolSide::End;
        };
        return std::ranges::any_of(block_.symbol->leads, isOnAxis) &&
               !std::ranges::all_of(block_.symbol->leads, isOnAxis);
    }
    double costOf(const SymbolPose& pose) const {
        constexpr double kTilted = 1, kCorner = 1, kTurnedBack = 4, kPlusBelow = 8;
        double cost = (pose.along ? pose.flipY : pose.flipX) == wish_.flipAcross ? 0 : 0.5;
        if (wish_.beside && pose.flipX) cost += kPlusBelow;
        if (hasLeadsAllRound() && pose.along == isDown()) cost += kTilted;
        for (const SymbolLead& lead : block_.symbol->leads) {
            if (netOf(lead.lead) < 0) continue;
            const Point out = way(pose, lead.side);
            cost += out.x == 0 ? kCorner : (out.x > 0) != wantsAfter(lead.lead) ? kTurnedBack : 0;
        }
        return cost;
    }

    void reach(Point at) {
        block_.before = std::max(block_.before, -at.x);
        block_.after = std::max(block_.after, at.x);
        block_.low = std::max(block_.low, -at.y);
        block_.high = std::max(block_.high, at.y);
    }

    void placeSymbol() {
        const Rect& own = block_.symbol->bounds;
        const Point a = block_.pose.place({own.left, own.top}), b = block_.pose.place({own.right(), own.bottom()});
        block_.body = {std::min(a.x, b.x), std::min(a.y, b.y), std::abs(a.x - b.x), std::abs(a.y - b.y)};
        reach({block_.body.left, block_.body.top});
        reach({block_.body.right(), block_.body.bottom()});
    }

    void wire(int net, Point from, Point to) {
        if (!(from == to)) block_.inner.push_back({net, from, to});
    }

    void turn() {
        std::vector<PosedLead> leads;
        for (const SymbolLead& lead : block_.symbol->leads) {
            const PosedLead posed{lead.lead, netOf(lead.lead), block_.pose.place(lead.at), way(block_.pose, lead.side),
                                  wantsAfter(lead.lead)};
            block_.leads.push_back({posed.lead, posed.net, posed.at});
            freeAfter_ = freeAfter_ && posed.out.x <= 0;
            freeBefore_ = freeBefore_ && posed.out.x >= 0;
            leads.push_back(posed);
        }
        TurnedLeads turned = turnLeads(leads, block_.body, !isDown());
        block_.ports = std::move(turned.ports);
        block_.openEnds = std::move(turned.openEnds);
        for (const InnerWire& inner : turned.wires) wire(inner.net, inner.from, inner.to);
        lowest_ = turned.low, highest_ = turned.high;
    }

    /// A word in a frame given along and across on a sheet of this flow.
    void word(WordKind kind, std::string text, Rect frame, int align) {
        block_.words.push_back({block_.part, kind, std::move(text), frame, align});
        const Point a = onSheet(wish_.flow, {frame.left, frame.top});
        const Point b = onSheet(wish_.flow, {frame.right(), frame.bottom()});
        reach(a), reach(b);
    }

    struct Line {
        WordKind kind;
        std::string text;
        double width;
    };
    std::vector<Line> lines() const {
        std::vector<Line> lines{{WordKind::Id, part_.id, sheetTextWidth(part_.id)}};
        if (const std::string value = sheetValue(part_); !value.empty())
            lines.push_back({WordKind::Value, value, sheetTextWidth(value)});
        if (const std::string longest = longestWord(part_); !longest.empty())
            lines.push_back({WordKind::Switch, "", sheetTextWidth(longest)});
        return lines;
    }

    /// Lines one below the other, from a place on the sheet; in a column of that width they end at its right.
    void writeColumn(Point at, double width = 0) {
        for (Line& line : lines()) {
            const double in = std::max(0.0, width - line.width);
            word(line.kind, std::move(line.text), {at.x + in, at.y, line.width, kLine}, width > 0 ? 1 : -1);
            at.y += kLine;
        }
    }

    void writeBeside() {
        const double tall = kLine * static_cast<double>(lines().size());
        if (isDown()) {
            writeColumn({std::max(block_.body.bottom(), highest_) + kBesideSymbol, -tall / 2});
            return;
        }
        const bool isHigh = -block_.body.top > kHighFeature;
        if (wish_.beside || (isHigh && freeAfter_)) {
            writeColumn({block_.body.right() + kBesideSymbol, -tall / 2});
            return;
        }
        if (isHigh && freeBefore_) {
            double widest = 0;
            for (const Line& line : lines()) widest = std::max(widest, line.width);
            writeColumn({block_.body.left - kBesideSymbol - widest, -tall / 2}, widest);
            return;
        }
        // Above, but below where that is nearer to what reaches high.
        const double above = std::min(block_.body.top, lowest_), below = std::max(block_.body.bottom(), highest_);
        const bool isBelow = -above > std::max(kHighFeature, below);
        writeRow(isBelow ? below + kBesideSymbol - 0.5 : above - kBesideSymbol - kLine + 0.5);
    }

    /// Lines one beside the other, with the symbol's middle.
    void writeRow(double y) {
        const std::vector<Line> all = lines();
        double width = kBesideSymbol * static_cast<double>(all.size() - 1);
        for (const Line& line : all) width += line.width;
        double x = -std::ceil(width) / 2;
        for (const Line& line : all) {
            word(line.kind, line.text, {x, y, line.width, kLine},
                 all.size() == 1             ? 0
                 : line.kind == WordKind::Id ? 1
                                             : -1);
            x += line.width + kBesideSymbol;
        }
    }

    std::vector<int> boxLeads(bool after) const {
        std::vector<int> leads;
        for (int lead = 0; lead < std::ssize(first_); ++lead) {
            if (first_[lead] == lead && netOf(lead) >= 0 && wantsAfter(lead) == after) leads.push_back(lead);
        }
        if (!wish_.leadOrder.empty())
            std::ranges::stable_sort(leads, {}, [&](int lead) { return wish_.leadOrder[lead]; });
        return leads;
    }

    void makeBox() {
        std::array<std::vector<int>, 2> sides{boxLeads(false), boxLeads(true)};
        for (int lead = 0; lead < std::ssize(first_); ++lead) {
            if (first_[lead] == lead && netOf(lead) < 0)
                (sides[0].size() < sides[1].size() ? sides[0] : sides[1]).push_back(lead);
        }
        double name = 0, words = 0;
        std::array<double, 2> widest{};
        for (const int side : {0, 1}) {
            for (const int lead : sides[side])
                widest[side] = std::max(widest[side], sheetTextWidth(part_.kind->leads[lead].name));
        }
        name = std::max(widest[0], widest[1]);
        const std::vector<Line> all = lines();
        for (const Line& line : all) words = std::max(words, line.width);
        const double tall = kLine * static_cast<double>(all.size());
        const double pitch = isDown() ? std::max(kBoxPitch, name + 2) : kBoxPitch;
        const double most = static_cast<double>(std::max({sides[0].size(), sides[1].size(), std::size_t{1}}));
        const double halfAcross = std::ceil(std::max(pitch * most, isDown() ? words + 4 : tall + 4) / 2);
        const double halfAlong = isDown() ? std::ceil(tall / 2 + kLine + 2) : std::ceil(words / 2 + name + 3);
        block_.body = {-halfAlong, -halfAcross, 2 * halfAlong, 2 * halfAcross};
        reach({-halfAlong, -halfAcross}), reach({halfAlong, halfAcross});
        for (const int side : {0, 1}) {
            const double edge = side == 0 ? -halfAlong : halfAlong, out = side == 0 ? -1 : 1;
            double across = -pitch * static_cast<double>(sides[side].size() - 1) / 2;
            for (const int lead : sides[side]) {
                boxLead(lead, {edge, across}, out, widest[side], pitch);
                across += pitch;
            }
        }
        double y = -tall / 2;
        for (const Line& line : all) {
            word(line.kind, line.text, {-line.width / 2, y, line.width, kLine}, 0);
            y += kLine;
        }
    }

    void boxLead(int lead, Point edge, double out, double widest, double pitch) {
        const int net = netOf(lead);
        const Point tip{edge.x + out * kBoxLead, edge.y};
        block_.leads.push_back({lead, net, edge});
        wire(net, edge, tip);
        if (net < 0) {
            block_.openEnds.push_back(tip);
        } else {
            block_.ports.push_back({lead, net, out > 0, tip.y, tip.x});
        }
        const std::string& name = part_.kind->leads[lead].name;
        if (isDown()) {
            const double wide = std::min(pitch - 1, sheetTextWidth(name));
            word(WordKind::Lead, name, {edge.y - wide / 2, edge.x - (out > 0 ? kLine + 0.5 : -0.5), wide, kLine}, 0);
        } else {
            word(WordKind::Lead, name, {out > 0 ? edge.x - widest - 1 : edge.x + 1, edge.y - kLine / 2, widest, kLine},
                 out > 0 ? 1 : -1);
        }
    }

    const Part& part_;
    const std::vector<int>& nets_;
    const BlockWish& wish_;
    std::vector<int> first_;
    SheetBlock block_;
    double lowest_ = 0, highest_ = 0;  ///< what turned and hanging leads reach
    bool freeBefore_ = true;           ///< no lead leaves towards the layers before
    bool freeAfter_ = true;            ///< likewise towards those that follow
};

}  // namespace

SheetBlock makeBlock(const Netlist& netlist, int part, const BlockWish& wish) {
    return BlockMaker(netlist, part, wish).run();
}

}  // namespace tiepoint
