#include "core/snapshot/readings.h"

#include "core/bench/resolve.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <tuple>

namespace tiepoint {
namespace {

/// Injections of one part by net: joined legs in one net count once.
using InjectionByNet = std::map<int, double>;

const Part& partAt(const Snapshot& snapshot, int part) { return snapshot.layout->bench->parts[part]; }

bool solved(const Snapshot& snapshot) { return snapshot.status() == Status::Solved; }

InjectionByNet injections(const Snapshot& snapshot, int part) {
    InjectionByNet byNet;
    const Layout& layout = *snapshot.layout;
    for (int lead = layout.firstLead[part]; lead < layout.firstLead[part + 1]; ++lead)
        byNet[layout.netOfLead[lead]] += snapshot.solution.leadInjection[lead];
    return byNet;
}

// The measured side of a rating, one line a quantity.

double elementCurrent(const Snapshot& snapshot, int part) {
    double largest = 0;
    for (const ElementState& element : snapshot.solution.elements)
        if (element.part == part) largest = std::max(largest, std::abs(element.currentAmpere));
    return largest;
}

double power(const Snapshot& snapshot, int part) { return std::max(0.0, snapshot.partPower[part]); }

/// How far the second lead lies above the first; kinds with a direction list the lead where current enters first.
double reverseVoltage(const Snapshot& snapshot, int part) {
    const int first = snapshot.layout->firstLead[part];
    if (snapshot.layout->firstLead[part + 1] - first < 2) return 0;
    const double volt = snapshot.leadVoltage(first + 1) - snapshot.leadVoltage(first);
    return std::isnan(volt) ? 0 : std::max(0.0, volt);
}

/// The widest difference between any two leads.
double voltage(const Snapshot& snapshot, int part) {
    double low = std::numeric_limits<double>::infinity(), high = -low;
    for (int lead = snapshot.layout->firstLead[part]; lead < snapshot.layout->firstLead[part + 1]; ++lead) {
        const double volt = snapshot.leadVoltage(lead);
        if (std::isnan(volt)) continue;
        low = std::min(low, volt);
        high = std::max(high, volt);
    }
    return std::max(0.0, high - low);
}

struct RatedQuantity {
    std::string_view name;
    std::string_view unit;
    double (*measure)(const Snapshot&, int part);
};
constexpr RatedQuantity kRatedQuantities[] = {
    {"current", "A", elementCurrent},
    {"power", "W", power},
    {"reverseVoltage", "V", reverseVoltage},
    {"voltage", "V", voltage},
};

std::optional<RatingShare> shareOf(const Snapshot& snapshot, int part, const Rating& rating) {
    const auto quantity = std::ranges::find(kRatedQuantities, std::string_view(rating.quantity), &RatedQuantity::name);
    if (quantity == std::end(kRatedQuantities)) return std::nullopt;
    const double limit = resolve(rating.limit, partAt(snapshot, part));
    if (!(limit > 0)) return std::nullopt;
    return RatingShare{&rating, quantity->measure(snapshot, part), limit, quantity->unit};
}

/// A voltmeter's own current is no branch of the circuit that it looks at.
bool measuresVolts(const Snapshot& snapshot, int part) {
    return std::ranges::any_of(snapshot.solution.elements, [&](const ElementState& element) {
        return element.part == part && element.closed &&
               partAt(snapshot, part).kind->model[element.spec].reads == "voltage";
    });
}

/// What flows between parts, seen from one net: which parts take current out of it.
class NetFollower {
public:
    explicit NetFollower(const Snapshot& snapshot) : snapshot_(snapshot) {
        const int parts = static_cast<int>(snapshot.layout->bench->parts.size());
        for (int part = 0; part < parts; ++part) {
            byPart_.push_back(measuresVolts(snapshot, part) ? InjectionByNet{} : injections(snapshot, part));
        }
        largest_ = snapshot.largestCurrentAmpere;
    }

    /// Anything smaller is leakage beside the current that is followed.
    bool flows(double ampere) const { return std::abs(ampere) > std::max(kNoCurrentAmpere, largest_ * kLeakShare); }

    /// The only part that takes current out of a net, or -1 where none or several do.
    int onlyTaker(int net) const {
        int found = -1;
        for (int part = 0; part < static_cast<int>(byPart_.size()); ++part) {
            const auto here = byPart_[part].find(net);
            if (here == byPart_[part].end() || !flows(here->second) || here->second < 0) continue;
            if (found >= 0) return -1;
            found = part;
        }
        return found;
    }

    /// The only net into which a part gives current, or -1.
    int onlyExit(int part) const {
        int found = -1;
        for (const auto& [net, ampere] : byPart_[part]) {
            if (!flows(ampere) || ampere > 0) continue;
            if (found >= 0) return -1;
            found = net;
        }
        return found;
    }

    bool carries(int part) const {
        return std::ranges::any_of(byPart_[part], [this](const auto& entry) { return flows(entry.second); });
    }
    double into(int part, int net) const { return byPart_[part].at(net); }
    double volt(int net) const { return snapshot_.solution.netVoltage[net]; }
    int partCount() const { return static_cast<int>(byPart_.size()); }

private:
    static constexpr double kLeakShare = 1e-6;
    const Snapshot& snapshot_;
    std::vector<InjectionByNet> byPart_;
    double largest_ = 0;
};

/// The only supply that carries current, or -1.
int onlySupply(const Snapshot& snapshot, const NetFollower& nets) {
    int found = -1;
    for (int part = 0; part < nets.partCount(); ++part) {
        if (!partAt(snapshot, part).kind->isSupply || !nets.carries(part)) continue;
        if (found >= 0) return -1;
        found = part;
    }
    return found;
}

/// Walks from the supply's plus, part by part; nothing if the current branches or a potential is unknown.
std::optional<Loop> followSupply(const NetFollower& nets, int supply) {
    Loop loop;
    loop.supply = supply;
    const int start = nets.onlyExit(supply);
    if (start < 0) return std::nullopt;
    loop.currentAmpere = -nets.into(supply, start);
    int net = start;
    for (int step = 0; step <= nets.partCount(); ++step) {
        const int part = nets.onlyTaker(net);
        if (part < 0) return std::nullopt;
        if (part == supply) {
            loop.supplyVolt = nets.volt(start) - nets.volt(net);
            return std::isnan(loop.supplyVolt) || loop.drops.empty() ? std::nullopt : std::optional(loop);
        }
        const int next = nets.onlyExit(part);
        if (next < 0) return std::nullopt;
        loop.drops.push_back({part, nets.volt(net), nets.volt(next)});
        net = next;
    }
    return std::nullopt;
}

/// What each lead draws out of its joint, seen from the joint: a part that gives current feeds the junction.
std::vector<std::vector<Branch>> branchesByJoint(const Snapshot& snapshot) {
    const Layout& layout = *snapshot.layout;
    std::vector<std::vector<Branch>> byJoint(layout.joints.size());
    const auto add = [&](int joint, Branch branch) {
        if (joint >= 0 && std::abs(branch.ampere) > kNoCurrentAmpere) byJoint[joint].push_back(branch);
    };
    for (int piece = 0; piece < static_cast<int>(layout.pieces.size()); ++piece) {
        const double ampere = snapshot.pieceCurrent[piece];
        add(layout.pieces[piece].from, {piece, -1, -ampere});
        add(layout.pieces[piece].to, {piece, -1, ampere});
    }
    for (int lead = 0; lead < layout.leadCount(); ++lead)  // joined leads already show as bridges
        if (layout.hubOfLead[lead] < 0) add(layout.jointOfLead[lead], {-1, lead, -snapshot.leadCurrent[lead]});
    return byJoint;
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
    for (const auto& [net, ampere] : injections(snapshot, part))
        (ampere > 0 ? through.inAmpere : through.outAmpere) += std::abs(ampere);
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

std::optional<Loop> simpleLoop(const Snapshot& snapshot) {
    if (!solved(snapshot)) return std::nullopt;
    const NetFollower nets(snapshot);
    const int supply = onlySupply(snapshot, nets);
    return supply < 0 ? std::nullopt : followSupply(nets, supply);
}

std::vector<Junction> junctions(const Snapshot& snapshot) {
    std::vector<Junction> found;
    if (!solved(snapshot)) return found;
    auto byJoint = branchesByJoint(snapshot);
    for (int joint = 0; joint < static_cast<int>(byJoint.size()); ++joint) {
        if (byJoint[joint].size() < 3 || snapshot.layout->joints[joint].hub) continue;  // a hub lies inside a part
        std::ranges::stable_sort(byJoint[joint], largerBranch);
        found.push_back({joint, std::move(byJoint[joint])});
    }
    std::ranges::stable_sort(found, [](const Junction& a, const Junction& b) {
        return largerBranch(a.branches.front(), b.branches.front());
    });
    return found;
}

Delivery delivery(const Snapshot& snapshot) {
    Delivery total;
    if (!solved(snapshot)) return total;
    const int parts = static_cast<int>(snapshot.layout->bench->parts.size());
    for (int part = 0; part < parts; ++part) {
        if (!partAt(snapshot, part).kind->isSupply || snapshot.partPower[part] >= 0) continue;
        total.supplies.push_back(part);
        total.currentAmpere += currentThrough(snapshot, part).outAmpere;
        total.powerWatt -= snapshot.partPower[part];
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
