// Each pair of things is looked at with the narrow test of its kind, and things that are far apart along x aren't looked at at all.

#include "core/edit/clashes.h"

#include "core/base/stopping.h"
#include "core/bench/cable_routes.h"
#include "core/bench/jumper_routes.h"
#include "core/edit/holes.h"

#include <algorithm>
#include <set>
#include <tuple>

namespace tiepoint {
namespace {

struct StretchOfX {
    double left, right;
};
StretchOfX stretchOf(Point a, Point b, double roomMm) {
    return {std::min(a.x, b.x) - roomMm, std::max(a.x, b.x) + roomMm};
}

bool isAmong(const std::vector<std::string>& ids, const std::string& id) {
    return std::ranges::find(ids, id) != ids.end();
}

/// The order in which clashes are told; equal ones beside each other.
auto rankOf(const Clash& clash) {
    return std::tie(clash.kind, clash.one, clash.oneLead, clash.other, clash.otherLead, clash.hole);
}

void tidy(std::vector<Clash>& clashes) {
    std::ranges::sort(clashes, {}, [](const Clash& clash) { return rankOf(clash); });
    clashes.erase(std::unique(clashes.begin(), clashes.end()), clashes.end());
}

}  // namespace

std::vector<Clash> firstOfEachPair(std::vector<Clash> clashes) {
    std::set<std::pair<std::string, std::string>> told;
    std::erase_if(clashes,
                  [&](const Clash& clash) { return !told.insert(std::minmax(clash.one, clash.other)).second; });
    return clashes;
}

Occupancy::Occupancy(const Bench& bench, const std::vector<std::string>& ignoring, const Layout* layout)
    : bench_(bench),
      layout_(layout),
      table_(placeThings(bench)) {
    addParts(ignoring);
    addJumpers(ignoring);
    bodies_.sort();
    legs_.sort();
    pins_.sort();
    flats_.sort();
    wires_.sort();
}

void Occupancy::addParts(const std::vector<std::string>& ignoring) {
    for (int index = 0; index < static_cast<int>(bench_.parts.size()); ++index) {
        const Part& part = bench_.parts[index];
        if (isAmong(ignoring, part.id)) continue;
        const PartPlace& place = table_.parts[index];
        const bool flies = part.kind->package->reach == Reach::Flying;
        for (int lead = 0; lead < static_cast<int>(part.leads.size()); ++lead) {
            if (!part.leads[lead]) continue;
            const Point tip = place.leadsMm[lead];
            pins_.add(tip.x, tip.x, {index, -1, lead, *part.leads[lead], tip});
            if (!flies) continue;
            const StretchOfX along = stretchOf(place.exitsMm[lead], tip, distance(place.exitsMm[lead], tip));
            wires_.add(along.left, along.right, {-1, index, lead, place.exitsMm[lead], tip});
        }
        if (const auto body = bodyOf(part, place, index)) {
            const double x = body->outline.centre.x;
            bodies_.add(x - body->radiusMm, x + body->radiusMm, *body);
        }
        for (const Leg& leg : legsOf(part, place, index)) {
            const StretchOfX along = stretchOf(leg.tip, leg.exit, 0);
            legs_.add(along.left, along.right, leg);
        }
    }
}

void Occupancy::addJumpers(const std::vector<std::string>& ignoring) {
    for (int index = 0; index < static_cast<int>(bench_.jumpers.size()); ++index) {
        const Jumper& jumper = bench_.jumpers[index];
        if (isAmong(ignoring, jumper.id)) continue;
        const std::array ends{endMm(bench_, table_, jumper.ends[0]), endMm(bench_, table_, jumper.ends[1])};
        for (int end = 0; end < 2; ++end) {
            const Hole* hole = std::get_if<Hole>(&jumper.ends[end]);
            if (hole != nullptr) pins_.add(ends[end].x, ends[end].x, {-1, index, end, *hole, ends[end]});
        }
        const StretchOfX along = stretchOf(ends[0], ends[1], jumper.flat ? 0 : distance(ends[0], ends[1]));
        if (jumper.flat)
            flats_.add(along.left, along.right, {index, ends[0], ends[1]});
        else
            wires_.add(along.left, along.right, {index, -1, -1, ends[0], ends[1]});
    }
}

const std::string& Occupancy::idOf(const Pin& pin) const {
    return pin.jumper >= 0 ? bench_.jumpers[pin.jumper].id : bench_.parts[pin.part].id;
}
const std::string& Occupancy::idOf(const Wire& wire) const {
    return wire.jumper >= 0 ? bench_.jumpers[wire.jumper].id : bench_.parts[wire.part].id;
}

const Layout& Occupancy::layout() const {
    if (layout_ == nullptr) {
        ownLayout_ = buildLayout(std::make_shared<const Bench>(bench_));
        layout_ = ownLayout_.get();
    }
    return *layout_;
}
int Occupancy::netOf(const Pin& pin) const { return layout().netOfHole(layout().holeIndex(pin.hole)); }
int Occupancy::netOf(const Leg& leg) const { return layout().netOfLead[layout().leadIndex(leg.part, leg.lead)]; }

void Occupancy::addBodyClashes(int part, const Body& body, Clashes& found) const {
    const std::string& own = bench_.parts[part].id;
    const double x = body.outline.centre.x, left = x - body.radiusMm, right = x + body.radiusMm;
    bodies_.within(left, right, [&](const Body& other) {
        if (other.part == part || !overlap(body.outline, other.outline)) return;
        const int first = std::min(part, other.part), second = std::max(part, other.part);
        found.push_back({ClashKind::Bodies, bench_.parts[first].id, bench_.parts[second].id, -1, -1, {}});
    });
    pins_.within(left, right, [&](const Pin& pin) {
        if (pin.part != part && covers(body, pin.at))
            found.push_back({ClashKind::Covered, idOf(pin), own, pin.lead, -1, pin.hole});
    });
    legs_.within(left, right, [&](const Leg& leg) {
        const Part& other = bench_.parts[leg.part];
        if (leg.part != part && runsThrough(body, leg))
            found.push_back({ClashKind::LegThrough, other.id, own, leg.lead, -1, other.leads[leg.lead]});
    });
    if (body.raised) return;
    flats_.within(left - kWireRoomMm, right + kWireRoomMm, [&](const Flat& flat) {
        if (runsThrough(body, flat.first, flat.second))
            found.push_back({ClashKind::FlatThrough, bench_.jumpers[flat.jumper].id, own, -1, -1, {}});
    });
}

void Occupancy::addLegClashes(const Leg& leg, Clashes& found) const {
    const Part& part = bench_.parts[leg.part];
    const StretchOfX along = stretchOf(leg.tip, leg.exit, kBareMm);
    bodies_.within(along.left, along.right, [&](const Body& body) {
        if (body.part != leg.part && runsThrough(body, leg))
            found.push_back(
                {ClashKind::LegThrough, part.id, bench_.parts[body.part].id, leg.lead, -1, part.leads[leg.lead]});
    });
    legs_.within(along.left, along.right, [&](const Leg& other) {
        if (other.part == leg.part || !touch(leg, other) || netOf(leg) == netOf(other)) return;
        const Leg &first = leg.part < other.part ? leg : other, &second = leg.part < other.part ? other : leg;
        const Part &one = bench_.parts[first.part], &two = bench_.parts[second.part];
        found.push_back({ClashKind::LegsTouch, one.id, two.id, first.lead, second.lead, one.leads[first.lead]});
    });
    pins_.within(along.left, along.right, [&](const Pin& pin) {
        if (pin.part != leg.part && touches(leg, pin.at) && netOf(leg) != netOf(pin))
            found.push_back({ClashKind::LegOnPin, idOf(pin), part.id, pin.lead, leg.lead, pin.hole});
    });
}

void Occupancy::addPinClashes(const Pin& pin, Clashes& found) const {
    bodies_.within(pin.at.x, pin.at.x, [&](const Body& body) {
        const bool own = pin.part >= 0 && body.part == pin.part;
        if (!own && covers(body, pin.at))
            found.push_back({ClashKind::Covered, idOf(pin), bench_.parts[body.part].id, pin.lead, -1, pin.hole});
    });
    legs_.within(pin.at.x - kBareMm, pin.at.x + kBareMm, [&](const Leg& leg) {
        const bool own = pin.part >= 0 && leg.part == pin.part;
        if (!own && touches(leg, pin.at) && netOf(leg) != netOf(pin))
            found.push_back({ClashKind::LegOnPin, idOf(pin), bench_.parts[leg.part].id, pin.lead, leg.lead, pin.hole});
    });
    flats_.within(pin.at.x - kFlatPinRoomMm, pin.at.x + kFlatPinRoomMm, [&](const Flat& flat) {
        if (flat.jumper != pin.jumper && distanceToStretch(pin.at, flat.first, flat.second) < kFlatPinRoomMm)
            found.push_back({ClashKind::FlatOnPin, bench_.jumpers[flat.jumper].id, idOf(pin), -1, pin.lead, pin.hole});
    });
}

void Occupancy::addFlatClashes(const Flat& flat, Clashes& found) const {
    const std::string& own = bench_.jumpers[flat.jumper].id;
    const StretchOfX along = stretchOf(flat.first, flat.second, kFlatPinRoomMm);
    bodies_.within(along.left, along.right, [&](const Body& body) {
        if (!body.raised && runsThrough(body, flat.first, flat.second))
            found.push_back({ClashKind::FlatThrough, own, bench_.parts[body.part].id, -1, -1, {}});
    });
    pins_.within(along.left, along.right, [&](const Pin& pin) {
        if (flat.jumper != pin.jumper && distanceToStretch(pin.at, flat.first, flat.second) < kFlatPinRoomMm)
            found.push_back({ClashKind::FlatOnPin, own, idOf(pin), -1, pin.lead, pin.hole});
    });
}

bool Occupancy::getsThrough(const Wire& wire, const InOrder<Body>& bodies) const {
    if (wire.jumper >= 0) return arcGetsTo(bodies, wire.first, wire.second);
    return cableGetsTo(cableRun(table_, bench_.parts[wire.part], table_.parts[wire.part], wire.lead), bodies);
}

std::vector<Body> Occupancy::inWayOf(const Wire& wire) const {
    if (wire.jumper >= 0) return inWayOfArc(bodies_, wire.first, wire.second);
    return inWayOfCable(cableRun(table_, bench_.parts[wire.part], table_.parts[wire.part], wire.lead), bodies_);
}

/// A wire that gets through nowhere, and the bodies in its way that aren't over one of its ends: those are told already.
void Occupancy::addWireClashes(const Wire& wire, Clashes& found) const {
    if (getsThrough(wire, bodies_)) return;
    for (const Body& body : inWayOf(wire)) {
        if (covers(body, wire.second) || (wire.jumper >= 0 && covers(body, wire.first))) continue;
        found.push_back({ClashKind::NoWay, idOf(wire), bench_.parts[body.part].id, wire.lead, -1, {}});
    }
}

/// Wires that would find a way if the body weren't there.
void Occupancy::addWiresPast(const Body& body, Clashes& found) const {
    const double x = body.outline.centre.x;
    wires_.within(x - body.radiusMm, x + body.radiusMm, [&](const Wire& wire) {
        if (wire.part == body.part || getsThrough(wire, bodies_)) return;
        if (covers(body, wire.second) || (wire.jumper >= 0 && covers(body, wire.first))) return;
        InOrder<Body> others;
        bodies_.eachSpan([&](double left, double right, const Body& other) {
            if (other.part != body.part) others.add(left, right, other);
        });
        others.sort();
        if (getsThrough(wire, others))
            found.push_back({ClashKind::NoWay, idOf(wire), bench_.parts[body.part].id, wire.lead, -1, {}});
    });
}

std::vector<Clash> Occupancy::clashesOf(const Part& part) const {
    const int index = bench_.partIndex(part.id);
    const PartPlace& place = table_.parts[index];
    const bool flies = part.kind->package->reach == Reach::Flying;
    Clashes found;
    const auto body = bodyOf(part, place, index);
    if (body) addBodyClashes(index, *body, found);
    for (const Leg& leg : legsOf(part, place, index)) addLegClashes(leg, found);
    for (int lead = 0; lead < static_cast<int>(part.leads.size()); ++lead) {
        if (!part.leads[lead]) continue;
        addPinClashes({index, -1, lead, *part.leads[lead], place.leadsMm[lead]}, found);
        if (flies) addWireClashes({-1, index, lead, place.exitsMm[lead], place.leadsMm[lead]}, found);
    }
    if (body && body->isTall()) addWiresPast(*body, found);
    tidy(found);
    return found;
}

std::vector<Clash> Occupancy::clashesOf(const Jumper& jumper) const {
    const int index = bench_.jumperIndex(jumper.id);
    const std::array ends{endMm(bench_, table_, jumper.ends[0]), endMm(bench_, table_, jumper.ends[1])};
    Clashes found;
    for (int end = 0; end < 2; ++end) {
        if (const Hole* hole = std::get_if<Hole>(&jumper.ends[end]))
            addPinClashes({-1, index, end, *hole, ends[end]}, found);
    }
    if (jumper.flat)
        addFlatClashes({index, ends[0], ends[1]}, found);
    else
        addWireClashes({index, -1, -1, ends[0], ends[1]}, found);
    tidy(found);
    return found;
}

std::vector<Clash> Occupancy::all() const {
    Clashes found;
    const auto each = [&](const auto& things, auto add) {
        things.each([&](const auto& thing) {
            stopIfAsked();
            add(thing);
        });
    };
    each(bodies_, [&](const Body& body) { addBodyClashes(body.part, body, found); });
    each(legs_, [&](const Leg& leg) { addLegClashes(leg, found); });
    each(flats_, [&](const Flat& flat) { addFlatClashes(flat, found); });
    each(wires_, [&](const Wire& wire) { addWireClashes(wire, found); });
    tidy(found);
    return found;
}

std::optional<Clash> Occupancy::over(const Hole& hole) const {
    const auto at = holeMm(bench_, hole);
    if (!at) return std::nullopt;
    std::optional<Clash> found;
    const auto keep = [&](Clash clash) {
        if (!found || clash.kind < found->kind) found = std::move(clash);
    };
    bodies_.within(at->x, at->x, [&](const Body& body) {
        if (covers(body, *at)) keep({ClashKind::Covered, {}, bench_.parts[body.part].id, -1, -1, hole});
    });
    flats_.within(at->x - kFlatPinRoomMm, at->x + kFlatPinRoomMm, [&](const Flat& flat) {
        if (distanceToStretch(*at, flat.first, flat.second) < kFlatPinRoomMm)
            keep({ClashKind::FlatOnPin, bench_.jumpers[flat.jumper].id, {}, -1, -1, hole});
    });
    legs_.within(at->x - kBareMm, at->x + kBareMm, [&](const Leg& leg) {
        const Part& part = bench_.parts[leg.part];
        if (touches(leg, *at) && !sameStrip(bench_, *part.leads[leg.lead], hole))
            keep({ClashKind::LegOnPin, {}, part.id, -1, leg.lead, hole});
    });
    return found;
}

}  // namespace tiepoint
