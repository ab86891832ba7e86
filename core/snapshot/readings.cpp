#include "core/snapshot/readings.h"

#include "core/bench/resolve.h"
#include "core/parts/rated_quantity.h"
#include "core/snapshot/solved_loop.h"
#include "core/time/settled.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <span>
#include <tuple>

namespace tiepoint {
namespace {

const Part& partAt(const Snapshot& snapshot, int part) { return snapshot.layout->bench->parts[part]; }

bool solved(const Snapshot& snapshot) { return snapshot.status() == Status::Solved; }

// The measured side of a rating, one line a quantity: the figure, and the same as it is shown.

double current(const Snapshot& snapshot, int part, const Rating& rating) {
    if (!rating.leads.empty())
        return std::abs(snapshot.leadCurrent[snapshot.layout->leadIndex(part, rating.leads.front())]);
    double largest = 0;
    for (const ElementState element : snapshot.solution.elements())
        if (element.part == part) largest = std::max(largest, std::abs(element.currentAmpere));
    return largest;
}
Figure shownCurrent(const Snapshot& snapshot, int part, const Rating& rating) {
    if (rating.leads.empty()) return snapshot.shown().through(part).most();
    return snapshot.shown().leadCurrent(snapshot.layout->leadIndex(part, rating.leads.front())).magnitude();
}

/// Of a bench that was followed, what lasted long enough to warm the part.
double power(const Snapshot& snapshot, int part, const Rating&) {
    const double lasting = std::max(0.0, snapshot.partPower[part]);
    return snapshot.settled ? std::max(lasting, snapshot.settled->warmWatt[part]) : lasting;
}
Figure shownPower(const Snapshot& snapshot, int part, const Rating& rating) {
    const double watt = power(snapshot, part, rating);
    const Figure lasting = snapshot.shown().power(part);
    if (watt <= std::max(0.0, snapshot.partPower[part])) return lasting;
    return Figure::nearest(scaleFor("W", watt), watt);
}

/// A lead of the layout below another; -1 where a potential isn't known.
struct LeadPair {
    int low = -1, high = -1;
    double volt(const Snapshot& snapshot) const {
        return low < 0 ? 0 : snapshot.leadVoltage(high) - snapshot.leadVoltage(low);
    }
    Figure shown(const Snapshot& snapshot) const {
        return low < 0 ? Figure() : snapshot.shown().leadVolt(high) - snapshot.shown().leadVolt(low);
    }
};

/// Of a part's leads, or of those that the rating names, the lowest and the highest; with two names both have to be known.
LeadPair widestLeads(const Snapshot& snapshot, int part, const Rating& rating) {
    LeadPair pair;
    const auto take = [&](int lead) {
        const double volt = snapshot.leadVoltage(lead);
        if (std::isnan(volt)) return false;
        if (pair.low < 0 || volt < snapshot.leadVoltage(pair.low)) pair.low = lead;
        if (pair.high < 0 || volt > snapshot.leadVoltage(pair.high)) pair.high = lead;
        return true;
    };
    const Layout& layout = *snapshot.layout;
    if (rating.leads.empty()) {
        for (int lead = layout.firstLead[part]; lead < layout.firstLead[part + 1]; ++lead) take(lead);
        return pair;
    }
    for (const int lead : rating.leads)
        if (!take(layout.leadIndex(part, lead))) return {};
    return pair;
}
double voltage(const Snapshot& snapshot, int part, const Rating& rating) {
    return widestLeads(snapshot, part, rating).volt(snapshot);
}
Figure shownVoltage(const Snapshot& snapshot, int part, const Rating& rating) {
    return widestLeads(snapshot, part, rating).shown(snapshot);
}

/// How far the second lead lies above the first; kinds with a direction list the lead where current enters first.
LeadPair reverseLeads(const Snapshot& snapshot, int part, const Rating& rating) {
    const Layout& layout = *snapshot.layout;
    if (!rating.leads.empty())
        return {layout.leadIndex(part, rating.leads[0]), layout.leadIndex(part, rating.leads[1])};
    const int first = layout.firstLead[part];
    return layout.firstLead[part + 1] - first < 2 ? LeadPair() : LeadPair{first, first + 1};
}
double reverseVoltage(const Snapshot& snapshot, int part, const Rating& rating) {
    const double volt = reverseLeads(snapshot, part, rating).volt(snapshot);
    return std::isnan(volt) ? 0 : std::max(0.0, volt);
}
Figure shownReverse(const Snapshot& snapshot, int part, const Rating& rating) {
    return reverseLeads(snapshot, part, rating).shown(snapshot);
}

struct Measured {
    std::string_view quantity;
    double (*measure)(const Snapshot&, int part, const Rating&);
    Figure (*shown)(const Snapshot&, int part, const Rating&);
};
constexpr Measured kMeasured[] = {
    {"current", current, shownCurrent},
    {"power", power, shownPower},
    {"voltage", voltage, shownVoltage},
    {"reverseVoltage", reverseVoltage, shownReverse},
};

const Measured& measuredBy(const Rating& rating) {
    const auto found = std::ranges::find(kMeasured, std::string_view(rating.quantity), &Measured::quantity);
    assert(found != std::end(kMeasured) && "the catalogue's loader checks the quantities of ratings");
    return *found;
}

std::optional<RatingShare> shareOf(const Snapshot& snapshot, int part, const Rating& rating) {
    const double limit = resolve(rating.limit, partAt(snapshot, part));
    if (!(limit > 0)) return std::nullopt;
    return RatingShare{&rating, measuredBy(rating).measure(snapshot, part, rating), limit,
                       findRatedQuantity(rating.quantity)->unit};
}

/// The only supply that carries current, or -1.
int onlySupply(const Snapshot& snapshot, const Traffic& traffic) {
    int found = -1;
    for (int part = 0; part < static_cast<int>(snapshot.layout->bench->parts.size()); ++part) {
        if (!partAt(snapshot, part).kind->isSupply || !traffic.carries(part)) continue;
        if (found >= 0) return -1;
        found = part;
    }
    return found;
}

/// What each lead draws out of its joint, seen from the joint: a part that gives current feeds the branch point.
std::vector<std::vector<Branch>> branchesByJoint(const Snapshot& snapshot) {
    const Layout& layout = *snapshot.layout;
    std::vector<std::vector<Branch>> byJoint(layout.joints.size());
    const auto add = [&](int joint, Branch branch) {
        if (joint >= 0 && std::abs(branch.ampere) > kNoCurrentAmpere) byJoint[joint].push_back(branch);
    };
    for (int piece = 0; piece < static_cast<int>(layout.pieces.size()); ++piece) {
        const double ampere = snapshot.pieceCurrent[piece];
        add(layout.pieces[piece].from, {piece, -1, -ampere, -snapshot.shown().pieceCurrent(piece)});
        add(layout.pieces[piece].to, {piece, -1, ampere, snapshot.shown().pieceCurrent(piece)});
    }
    for (int lead = 0; lead < layout.leadCount(); ++lead)  // joined leads already show as bridges
        if (layout.hubOfLead[lead] < 0)
            add(layout.jointOfLead[lead], {-1, lead, -snapshot.leadCurrent[lead], -snapshot.shown().leadCurrent(lead)});
    return byJoint;
}

/// Current out of the plus of a source that lifts it, or at least doesn't let it fall: one that metal joins plus to minus lifts it by
/// nothing, and all that it gives turns to heat inside.
bool gives(const Snapshot& snapshot, const ElementState& element) {
    return element.currentAmpere < -kNoCurrentAmpere && element.powerWatt <= 0 &&
           partAt(snapshot, element.part).kind->isSupply;
}

bool largerBranch(const Branch& a, const Branch& b) { return std::abs(a.ampere) > std::abs(b.ampere); }

/// What makes a part worth a big number: too much first, then light, then load, then being the supply.
struct Interest {
    bool overloaded = false;
    bool light = false;
    double share = 0;
    bool supply = false;
    auto key() const { return std::tuple(overloaded, light, share, supply); }
};

Interest interestOf(const Snapshot& snapshot, int part) {
    const PartKind& kind = *partAt(snapshot, part).kind;
    const auto rating = tightestRating(snapshot, part);
    const double share = rating ? rating->share() : 0;
    const bool overloaded = rating && rating->rating->maximum && share > 1 && !kind.isSupply;
    return {overloaded, kind.emitsLight, kind.isSupply ? 0 : share, kind.isSupply};
}

}  // namespace

Through currentThrough(const Snapshot& snapshot, int part) {
    Through through;
    if (!solved(snapshot)) return through;
    const Layout& layout = *snapshot.layout;
    for (int lead = layout.firstLead[part]; lead < layout.firstLead[part + 1]; ++lead) {
        const double ampere = snapshot.solution.leadInjection[lead];
        (ampere > 0 ? through.inAmpere : through.outAmpere) += std::abs(ampere);
    }
    return through;
}

std::vector<RatingShare> ratingShares(const Snapshot& snapshot, int part) {
    std::vector<RatingShare> shares;
    if (!solved(snapshot)) return shares;
    for (const Rating& rating : partAt(snapshot, part).kind->ratings)
        if (const auto share = shareOf(snapshot, part, rating)) shares.push_back(*share);
    return shares;
}

std::optional<RatingShare> tightestRating(const Snapshot& snapshot, int part) {
    const auto shares = ratingShares(snapshot, part);
    const RatingShare* best = nullptr;
    for (const RatingShare& share : shares)
        if (share.rating->maximum && (!best || share.share() > best->share())) best = &share;
    if (!best && !shares.empty()) best = &shares.front();
    return best ? std::optional(*best) : std::nullopt;
}

Figure shownFigure(const Snapshot& snapshot, int part, const Rating& rating) {
    return measuredBy(rating).shown(snapshot, part, rating);
}

std::optional<Loop> simpleLoop(const Snapshot& snapshot) {
    if (!solved(snapshot)) return std::nullopt;
    const Traffic traffic(snapshot);
    const int supply = onlySupply(snapshot, traffic);
    const auto round = supply < 0 ? std::nullopt : loopThrough(snapshot, traffic, supply);
    if (!round || round->parts.size() < 2 || divides(traffic, *round)) return std::nullopt;
    const auto onLoop = [&](int part) {
        return std::ranges::find(round->parts, part, &LoopPart::part) != round->parts.end();
    };
    for (int part = 0; part < static_cast<int>(snapshot.layout->bench->parts.size()); ++part)
        if (traffic.carries(part) && !onLoop(part)) return std::nullopt;
    const auto& volts = snapshot.solution.netVoltage;
    const LoopPart& first = round->parts.front();
    Loop loop{supply, first.ampere, volts[first.toNet] - volts[first.fromNet], {}, {}};
    loop.supplyShown = snapshot.shown().volt(first.toNet) - snapshot.shown().volt(first.fromNet);
    for (const LoopPart& each : std::span(round->parts).subspan(1))
        loop.drops.push_back({each.part, volts[each.fromNet], volts[each.toNet], snapshot.shown().volt(each.fromNet),
                              snapshot.shown().volt(each.toNet)});
    return std::isnan(loop.supplyVolt) ? std::nullopt : std::optional(loop);
}

std::vector<BranchPoint> branchPoints(const Snapshot& snapshot) {
    std::vector<BranchPoint> found;
    if (!solved(snapshot)) return found;
    auto byJoint = branchesByJoint(snapshot);
    for (int joint = 0; joint < static_cast<int>(byJoint.size()); ++joint) {
        if (byJoint[joint].size() < 3 || snapshot.layout->joints[joint].hub) continue;  // a hub lies inside a part
        std::ranges::stable_sort(byJoint[joint], largerBranch);
        found.push_back({joint, std::move(byJoint[joint])});
    }
    std::ranges::stable_sort(found, [](const BranchPoint& a, const BranchPoint& b) {
        return largerBranch(a.branches.front(), b.branches.front());
    });
    return found;
}

Delivery delivery(const Snapshot& snapshot) {
    Delivery total;
    total.power = snapshot.shown().watt(0);
    if (!solved(snapshot)) return total;
    for (const ElementState element : snapshot.solution.elements()) {
        if (!gives(snapshot, element)) continue;
        const PartKind& kind = *partAt(snapshot, element.part).kind;
        const ElementSpec& spec = kind.model[element.spec];
        const auto volt = [&](const std::string& lead) {
            return snapshot.shown().leadVolt(snapshot.layout->leadIndex(element.part, kind.leadIndex(lead)));
        };
        total.supplies.push_back({element.part, -snapshot.partPower[element.part],
                                  snapshot.shown().through(element.part).out, volt(spec.from()) - volt(spec.to())});
        total.powerWatt -= snapshot.partPower[element.part];
        total.power = total.power - snapshot.shown().power(element.part);
    }
    return total;
}

int mostInteresting(const Snapshot& snapshot) {
    const int parts = static_cast<int>(snapshot.layout->bench->parts.size());
    int best = -1;
    Interest bestInterest;
    for (int part = 0; part < parts; ++part) {
        const Interest interest = interestOf(snapshot, part);
        if (best >= 0 && interest.key() <= bestInterest.key()) continue;
        best = part;
        bestInterest = interest;
    }
    return best;
}

}  // namespace tiepoint
