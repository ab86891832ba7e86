#include "ui/gesture/under.h"

#include "core/edit/placement.h"
#include "ui/paint/bench_painter.h"
#include "ui/paint/note_painter.h"

#include <algorithm>
#include <cmath>

namespace tiepoint::ui {
namespace {

constexpr double kHoleReachMm = 1.27;  ///< half a pitch: the whole face of a board is holes
constexpr double kTipReachMm = 0.9;    ///< about the pin of a lead or jumper in its hole
constexpr double kSocketReachMm = 3.0;

bool covers(const Outline& body, Point at) {
    const Point offset = at - body.centre;
    if (body.shape == BodyShape::Round) return length(offset) <= body.halfLength;
    const double c = std::cos(body.angle), s = std::sin(body.angle);
    const Point local{c * offset.x + s * offset.y, c * offset.y - s * offset.x};
    return std::abs(local.x) <= body.halfLength && std::abs(local.y) <= body.halfWidth;
}

bool isFlying(const Part& part) { return part.kind->package->reach == Reach::Flying; }

bool isSelected(const Picture& picture, const std::string& id) {
    const auto& selected = picture.marks.selected;
    return std::find(selected.begin(), selected.end(), id) != selected.end();
}

/// Index of the lead whose tip is nearest.
int nearestLead(const PartPlace& place, Point at) {
    const auto nearer = [at](Point a, Point b) { return distance(a, at) < distance(b, at); };
    return static_cast<int>(std::min_element(place.leadsMm.begin(), place.leadsMm.end(), nearer) -
                            place.leadsMm.begin());
}

void lookAtPart(const Picture& picture, int index, Point at, Under& under) {
    const Part& part = picture.bench().parts[static_cast<std::size_t>(index)];
    const PartPlace& place = picture.table->parts[static_cast<std::size_t>(index)];
    const QPointF point(at.x, at.y);
    if (controlShape(picture, index).contains(point)) under.control = part.id;
    const bool body = covers(place.pose.body, at);
    if (body) under.body = part.id;
    if (place.leadsMm.empty()) return;
    const int lead = nearestLead(place, at);
    const auto l = static_cast<std::size_t>(lead);
    if (part.kind->leads[l].socket) {
        if (distance(place.leadsMm[l], at) <= kSocketReachMm) under.socket = Socket{part.id, lead};
        return;
    }
    const bool atTip = distance(place.leadsMm[l], at) <= kTipReachMm;
    const bool onLead = !body && (atTip || partShape(picture, index).contains(point));
    if (onLead) under.lead = End{part.id, lead, false};
    const bool bends = part.kind->package->reach == Reach::Bending;
    if ((isFlying(part) && onLead) || (bends && !body && atTip && isSelected(picture, part.id)))
        under.grip = End{part.id, lead, false};
}

void lookAtJumper(const Picture& picture, int index, Point at, Under& under) {
    const Jumper& jumper = picture.bench().jumpers[static_cast<std::size_t>(index)];
    for (int end = 0; end < 2; ++end) {
        if (distance(endMm(picture.bench(), *picture.table, jumper.ends[static_cast<std::size_t>(end)]), at) >
            kTipReachMm)
            continue;
        if (isSelected(picture, jumper.id)) under.grip = End{jumper.id, end, true};
        return;  // the pin is the hole's
    }
    if (jumperBounds(picture, index).contains(QPointF(at.x, at.y)) &&
        jumperShape(picture, index).contains(QPointF(at.x, at.y))) {
        under.wire = jumper.id;
    }
}

}  // namespace

std::string Under::thing() const {
    if (!note.empty()) return note;
    if (!pinned.empty()) return pinned;
    if (!wire.empty()) return wire;
    if (!body.empty()) return body;
    if (lead) return lead->id;
    return {};
}

Under whatLiesAt(const Picture& picture, Point at) {
    Under under;
    for (int note = 0; note < static_cast<int>(picture.bench().notes.size()); ++note) {
        if (noteFrame(picture, note).contains(QPointF(at.x, at.y)))
            under.note = picture.bench().notes[static_cast<std::size_t>(note)].id;
    }
    if (!under.note.empty()) return under;
    if (picture.pinned) {
        for (const PinnedTag& tag : *picture.pinned) {
            if (tag.frame.contains(QPointF(at.x, at.y))) under.pinned = tag.id;
        }
        if (!under.pinned.empty()) return under;
    }
    for (int part = 0; part < static_cast<int>(picture.bench().parts.size()); ++part) {
        if (partBounds(picture, part).contains(QPointF(at.x, at.y))) lookAtPart(picture, part, at, under);
    }
    for (int jumper = 0; jumper < static_cast<int>(picture.bench().jumpers.size()); ++jumper)
        lookAtJumper(picture, jumper, at, under);
    under.hole = nearestHole(picture.bench(), picture.table->seen(at), kHoleReachMm);
    return under;
}

}  // namespace tiepoint::ui
