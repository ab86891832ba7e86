// Method notes. Seen from one side of the symbol the wires that go round it are nested: of those that leave towards the following layers the
// one whose plumb stands furthest that way lies innermost, and likewise backwards, so that none of a sort crosses another. A wire that goes
// the one way crosses one that goes the other only where their plumbs stand in the wrong order, and then once.

#include "core/diagram/turns.h"

#include <algorithm>
#include <cmath>

namespace tiepoint {
namespace {

constexpr double kTurnOut = 2;    // between a symbol and the first wire beside it
constexpr double kTurnPitch = 3;  // between wires beside a symbol
constexpr double kHangLength = 3;
constexpr double kClearPlumb = 2;

class LeadTurner {
public:
    LeadTurner(const std::vector<PosedLead>& leads, const Rect& body, bool highFirst)
        : leads_(leads),
          body_(body),
          highFirst_(highFirst) {}

    TurnedLeads run() {
        turned_.low = body_.top, turned_.high = body_.bottom();
        for (const PosedLead& lead : leads_) {
            if (lead.net < 0) hang(lead);
        }
        for (const PosedLead& lead : leads_) {
            if (lead.net >= 0 && isStraight(lead))
                turned_.ports.push_back({lead.lead, lead.net, lead.after, lead.at.y, lead.at.x});
        }
        for (const double side : {-1.0, 1.0}) leaveSideways(side);
        for (const PosedLead& lead : leads_) {
            if (lead.net >= 0 && lead.out.x == 0) plumbs_.push_back({&lead, lead.at, lead.out.y < 0});
        }
        for (const bool low : {true, false}) goRound(low);
        return std::move(turned_);
    }

private:
    /// A wire on its way across, from a place beside the symbol to its level.
    struct Plumb {
        const PosedLead* lead;
        Point from;
        bool low;
    };

    static bool isStraight(const PosedLead& lead) { return lead.out.x != 0 && (lead.out.x > 0) == lead.after; }

    void hang(const PosedLead& lead) {
        const Point end = lead.at + lead.out * kHangLength;
        turned_.wires.push_back({-1, lead.at, end});
        turned_.openEnds.push_back(end);
        turned_.low = std::min(turned_.low, end.y);
        turned_.high = std::max(turned_.high, end.y);
    }

    /// Leads of one of the sides along the current that have to go the other way: outermost those that have furthest to go across.
    void leaveSideways(double side) {
        double first = side < 0 ? body_.left : body_.right();
        std::vector<const PosedLead*> own;
        for (const PosedLead& lead : leads_) {
            if (lead.out.x != side) continue;
            if (lead.net < 0) {
                first = side < 0 ? std::min(first, lead.at.x - kHangLength) : std::max(first, lead.at.x + kHangLength);
            } else if (!isStraight(lead)) {
                own.push_back(&lead);
            }
        }
        std::ranges::sort(own, {}, [](const PosedLead* lead) { return lead->at.y; });
        const auto goesLow = [&](const PosedLead& lead) {
            const int less = inTheWay(lead, side, true), more = inTheWay(lead, side, false);
            if (less != more) return less < more;
            return lead.at.y != 0 ? lead.at.y < 0 : !highFirst_;
        };
        std::vector<const PosedLead*> rising, falling;
        for (const PosedLead* lead : own) (goesLow(*lead) ? rising : falling).push_back(lead);
        std::ranges::reverse(falling);
        for (const auto& [list, low] : {std::pair(&rising, true), std::pair(&falling, false)}) {
            double x = first + side * kTurnOut;
            for (const PosedLead* lead : *list) {
                const Point corner{x, lead->at.y};
                turned_.wires.push_back({lead->net, lead->at, corner});
                plumbs_.push_back({lead, corner, low});
                x += side * kTurnPitch;
            }
        }
    }
    /// What a lead of that side would cross on its way to the low or the high corner.
    int inTheWay(const PosedLead& lead, double side, bool low) const {
        return static_cast<int>(std::ranges::count_if(leads_, [&](const PosedLead& other) {
            return &other != &lead && other.out.x == side && (other.net < 0 || isStraight(other)) &&
                   (low ? other.at.y < lead.at.y : other.at.y > lead.at.y);
        }));
    }

    /// Levels of the wires on one side of the symbol, from the innermost outward.
    void goRound(bool low) {
        std::vector<const Plumb*> forward, back;
        for (const Plumb& plumb : plumbs_) {
            if (plumb.low == low) (plumb.lead->after ? forward : back).push_back(&plumb);
        }
        std::ranges::sort(forward, std::greater<>(), [](const Plumb* plumb) { return plumb->from.x; });
        std::ranges::sort(back, {}, [](const Plumb* plumb) { return plumb->from.x; });
        const double edge =
            low ? std::floor((turned_.low - kTurnOut) * 2) / 2 : std::ceil((turned_.high + kTurnOut) * 2) / 2;
        std::vector<std::pair<double, int>> taken;  // by plumbs that go forward: where from, level
        int level = 0;
        for (const Plumb* plumb : forward) {
            taken.emplace_back(plumb->from.x, level);
            goAlong(*plumb, edge, level++);
        }
        int inner = 0;
        for (const Plumb* plumb : back) {
            for (const auto& [x, other] : taken) {
                if (x < plumb->from.x + kClearPlumb) inner = std::max(inner, other + 1);
            }
            goAlong(*plumb, edge, inner++);
        }
    }
    void goAlong(const Plumb& plumb, double edge, int level) {
        const Point corner{plumb.from.x, edge + (plumb.low ? -kTurnPitch : kTurnPitch) * level};
        turned_.wires.push_back({plumb.lead->net, plumb.from, corner});
        turned_.ports.push_back({plumb.lead->lead, plumb.lead->net, plumb.lead->after, corner.y, corner.x});
        turned_.low = std::min(turned_.low, corner.y);
        turned_.high = std::max(turned_.high, corner.y);
    }

    const std::vector<PosedLead>& leads_;
    const Rect& body_;
    bool highFirst_;
    TurnedLeads turned_;
    std::vector<Plumb> plumbs_;
};

}  // namespace

TurnedLeads turnLeads(const std::vector<PosedLead>& leads, const Rect& body, bool highFirst) {
    return LeadTurner(leads, body, highFirst).run();
}

}  // namespace tiepoint
