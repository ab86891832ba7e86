// What a solved reduction says of currents and voltages (see reduction.h).

#include "core/base/disjoint_sets.h"
#include "core/variants/reduction.h"

#include <algorithm>
#include <limits>

namespace tiepoint {

int Reduction::portOf(int ownElement) const {
    for (std::size_t k = 0; k < ports_.ports().size(); ++k)
        if (ports_.ports()[k].element == ownElement) return static_cast<int>(k);
    return -1;
}

double Reduction::ampere(int part, int spec) const {
    if (isTouched_[part]) {
        for (const OwnElement& own : ownElements_) {
            if (own.part != part || own.spec != spec) continue;
            const int port = portOf(own.element);
            return port < 0 ? 0 : ports_.drive(port);
        }
        return 0;
    }
    const BaseSystem::Place& place = base_.placeOf(strips_.firstElement(part) + spec);
    if (place.stiff >= 0) return ports_.stiffAmpere(place.stiff);
    if (place.soft >= 0) {
        const BaseSystem::Soft& s = base_.softs()[place.soft];
        const int component = base_.componentOf(s.from);
        return s.siemens * (ports_.volt({s.from, component}) - ports_.volt({s.to, component}));
    }
    if (place.curve < 0) return 0;
    const double tangent = base_.tangent(place.curve).at(across_[place.curve]);
    if (nearPort_[place.curve] >= 0) return tangent + ports_.drive(nearPort_[place.curve]);
    return tangent + (isSoft_ ? soft_[place.curve] : 0);
}

double Reduction::volt(int part, int lead) const {
    const Part& base = strips_.layout().bench->parts[part];
    const Part* const as = partIn(*variant_, part, base);
    constexpr double kUnknown = std::numeric_limits<double>::quiet_NaN();
    if (!as) return kUnknown;
    int metal = strips_.metalOfLead(strips_.layout().leadIndex(part, lead));
    if (const auto hole = touchedHole(*as, lead))
        metal = strips_.metalOf(*hole);
    else if (touchedHole(base, lead))
        return kUnknown;  // it hangs now
    const int node = strips_.nodeOf(metal);
    MetalPoint point;
    if (node >= 0) {
        point = {node, base_.componentOf(node)};
    } else {
        const auto found = std::find(fresh_.begin(), fresh_.end(), metal);
        if (found == fresh_.end()) return kUnknown;
        point.part = base_.componentCount() + static_cast<int>(found - fresh_.begin());
    }
    return isTied(point) ? ports_.volt(point) : kUnknown;
}

/// Where a piece was kept from floating, what hangs together is counted.
bool Reduction::isTied(const MetalPoint& point) const {
    if (!ports_.anyStays()) return ports_.isTied(point.part);
    if (tied_.empty()) countTied();
    return tied_[point.node >= 0 ? point.node : base_.nodeCount() + point.part] != 0;
}

void Reduction::countTied() const {
    const int nodes = base_.nodeCount();
    const auto count = static_cast<std::size_t>(nodes + base_.componentCount()) + fresh_.size();
    DisjointSets joined(count);
    const auto placeOf = [&](const MetalPoint& p) { return p.node >= 0 ? p.node : nodes + p.part; };
    std::vector<char> goes(base_.stiffs().size() + base_.softs().size() + base_.curves().size(), 0);
    const auto numberOf = [&](const BaseSystem::Place& place) {
        if (place.stiff >= 0) return place.stiff;
        const int stiffs = static_cast<int>(base_.stiffs().size());
        return place.soft >= 0 ? stiffs + place.soft : stiffs + static_cast<int>(base_.softs().size()) + place.curve;
    };
    for (const Gone& gone : allGone_) goes[numberOf(gone.place)] = 1;
    const auto join = [&](const auto& branches, int first) {
        for (std::size_t k = 0; k < branches.size(); ++k)
            if (!goes[first + k]) joined.join(branches[k].from, branches[k].to);
    };
    join(base_.stiffs(), 0);
    join(base_.softs(), numberOf({-1, 0, -1}));
    join(base_.curves(), numberOf({-1, -1, 0}));
    for (const Port& p : ports_.ports())
        if (!p.goes) joined.join(placeOf(p.a), placeOf(p.b));
    tied_.assign(count, 0);
    for (std::size_t k = 0; k < count; ++k)
        tied_[k] = base_.reference() >= 0 && joined.areJoined(static_cast<int>(k), base_.reference());
}

}  // namespace tiepoint
