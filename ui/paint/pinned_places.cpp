#include "ui/paint/pinned_places.h"

#include "core/snapshot/pinned_value.h"
#include "ui/paint/bench_painter.h"
#include "ui/paint/curve.h"
#include "ui/paint/label_places.h"
#include "ui/paint/part_scenes.h"
#include "ui/paint/shade.h"

#include <QLineF>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace tiepoint::ui {
namespace {

constexpr double kAwayEm[] = {0.75, 1.7, 2.8, 4.2};  ///< from what is measured to the nearest point of the tag
constexpr double kFartherDislike = 0.5;              ///< for each step away
constexpr int kDirections = 16;
constexpr double kEndRoomMm = 1.1;   ///< about an end, which no tag may hide
constexpr double kLeaderHidden = 4;  ///< cost of a leader under a tag
/// A width that most readings share.
const QString kUsualText = QStringLiteral("88.8 mV");

QPointF holeAt(const Picture& picture, const Hole& hole) { return toQt(picture.seenAt(hole)); }

/// The middle of a lead outside of its part.
QPointF middleOfLead(const Picture& picture, int part, int lead) {
    const PartPlace& place = picture.table->parts[static_cast<std::size_t>(part)];
    const auto l = static_cast<std::size_t>(lead);
    return (toQt(place.leadsMm[l]) + toQt(place.exitsMm[l])) / 2;
}

/// What a tag points at. A part is pointed at from where the tag lies; see nearestOf.
struct EndsOf {
    const Picture& picture;
    using Ends = std::vector<TagEnd>;

    Ends operator()(const VoltsAt& at) const { return {{holeAt(picture, at.hole)}}; }
    Ends operator()(const VoltsBetween& between) const {
        return {{holeAt(picture, between.first), TagEnd::Sign::Plus},
                {holeAt(picture, between.second), TagEnd::Sign::Minus}};
    }
    Ends operator()(const AmperesIn& in) const {
        const Bench& bench = picture.bench();
        if (!in.lead.empty()) {
            const int part = bench.partIndex(in.id);
            return {
                {middleOfLead(picture, part, bench.parts[static_cast<std::size_t>(part)].kind->leadIndex(in.lead))}};
        }
        const Polyline line = Polyline::of(jumperLine(picture, bench.jumperIndex(in.id)));
        return {{line.at(line.lengthMm() / 2).at}};
    }
    Ends operator()(const WattsOf& of) const {
        return {{toQt(picture.table->parts[static_cast<std::size_t>(picture.bench().partIndex(of.part))].pose.centre)}};
    }
};

QRectF bodyOfId(const Picture& picture, const std::string& id) {
    const PartScene scene = sceneOf(picture, picture.bench().partIndex(id));
    return findPackagePainter(scene.part.kind->package->name)->body(scene).boundingRect();
}

/// All round a place, the nearest and the upper ones first.
std::vector<Candidate> around(QPointF centre, QSizeF size, double emMm) {
    std::vector<Candidate> candidates;
    double dislike = 0;
    for (const double away : kAwayEm) {
        for (int i = 0; i < kDirections; ++i) {
            const double angle = 2 * std::numbers::pi * i / kDirections;
            const QPointF way(std::cos(angle), std::sin(angle));
            // So far that the frame's edge, not its middle, keeps the distance.
            const double half = std::min(std::abs(way.x()) < 1e-9 ? 1e9 : size.width() / 2 / std::abs(way.x()),
                                         std::abs(way.y()) < 1e-9 ? 1e9 : size.height() / 2 / std::abs(way.y()));
            candidates.push_back({centre + way * (half + away * emMm), dislike + 0.2 * (1 + way.y())});
        }
        dislike += kFartherDislike;
    }
    return candidates;
}

bool crosses(const QLineF& leader, const QRectF& frame) {
    if (frame.contains(leader.p1()) || frame.contains(leader.p2())) return true;
    const QPointF corners[] = {frame.topLeft(), frame.topRight(), frame.bottomRight(), frame.bottomLeft()};
    for (int i = 0; i < 4; ++i) {
        if (leader.intersects(QLineF(corners[i], corners[(i + 1) % 4])) == QLineF::BoundedIntersection) return true;
    }
    return false;
}

/// Keeps leaders in sight: a place whose tag lies over one, or whose own would run under a tag, is disliked.
void dislikeHiding(std::vector<Candidate>& candidates, QSizeF size, const std::vector<TagEnd>& ends,
                   const std::vector<PinnedTag>& placed) {
    for (Candidate& candidate : candidates) {
        const QRectF frame(candidate.centre - QPointF(size.width() / 2, size.height() / 2), size);
        for (const PinnedTag& other : placed) {
            for (const TagEnd& end : ends)
                candidate.dislike += crosses({nearestOf(frame, end.at), end.at}, other.frame) ? kLeaderHidden : 0;
            for (const TagEnd& end : other.ends)
                candidate.dislike += crosses({nearestOf(other.frame, end.at), end.at}, frame) ? kLeaderHidden : 0;
        }
    }
}

}  // namespace

QRectF endFrame(const TagEnd& end) {
    return {end.at - QPointF(kEndRoomMm, kEndRoomMm), QSizeF(2 * kEndRoomMm, 2 * kEndRoomMm)};
}

QPointF nearestOf(const QRectF& frame, QPointF to) {
    return {std::clamp(to.x(), frame.left(), frame.right()), std::clamp(to.y(), frame.top(), frame.bottom())};
}

PinnedTag pinnedTag(const Picture& picture, const PinnedReading& reading) {
    PinnedTag tag;
    tag.id = reading.id;
    if (picture.snapshot) tag.text = QString::fromStdString(pinnedText(*picture.snapshot, reading));
    if (picture.snapshot && !frozenText(reading)) tag.spark = sparkOf(*picture.snapshot, reading.id);
    tag.ends = std::visit(EndsOf{picture}, reading.of);
    return tag;
}

double pinnedWidth(const PinnedTag& tag, const WordSizes& sizes) {
    const Lettering lettering = readingLettering(sizes);
    return std::max(textWidthMm(tag.text, lettering), textWidthMm(kUsualText, lettering)) +
           (2 * kTagPadEm + (tag.isHung() ? 0 : kPinRoomEm)) * lettering.sizeMm;
}

std::vector<TagFoot> pinnedFeet(const Picture& picture, const PinnedReading& reading) {
    const auto* watts = std::get_if<WattsOf>(&reading.of);
    const auto* amperes = std::get_if<AmperesIn>(&reading.of);
    std::vector<TagFoot> feet;
    if (watts) {  // on the edge of the body, from above or from below
        const QRectF body = bodyOfId(picture, watts->part);
        for (const double share : {0.5, 0.3, 0.7}) {
            const double x = body.left() + share * body.width(), dislike = std::abs(share - 0.5);
            feet.push_back({{{x, body.top()}}, dislike});
            feet.push_back({{{x, body.bottom()}}, dislike});
        }
    } else if (amperes && amperes->lead.empty()) {
        const Polyline line = Polyline::of(jumperLine(picture, picture.bench().jumperIndex(amperes->id)));
        for (const double share : {0.5, 0.35, 0.65, 0.2, 0.8})
            feet.push_back({{fromQt(line.at(share * line.lengthMm()).at)}, std::abs(share - 0.5)});
    } else {
        TagFoot foot;
        for (const TagEnd& end : std::visit(EndsOf{picture}, reading.of)) foot.ends.push_back(fromQt(end.at));
        feet.push_back(std::move(foot));
    }
    return feet;
}

void stand(PinnedTag& tag, const Rect& frame, const std::vector<Point>& ends) {
    tag.frame = toQt(frame);
    for (std::size_t i = 0; i < ends.size(); ++i) tag.ends[i].at = toQt(ends[i]);
}

void placeOthersBeside(const Picture& picture, const TagGround& ground, std::vector<PinnedTag>& tags) {
    if (std::none_of(tags.begin(), tags.end(), [](const PinnedTag& tag) { return tag.frame.isEmpty(); })) return;
    Clearance clearance(ground.words);
    Picture untouched = picture;  // what the pointer shows of switches moves no tag
    untouched.marks = {};
    placeIds(untouched, clearance);
    for (const Rect& note : ground.words->notes) clearance.take(toQt(note));
    std::vector<PinnedTag> placed;
    for (const PinnedTag& tag : tags) {
        for (const TagEnd& end : tag.ends) clearance.take(endFrame(end));
        if (tag.frame.isEmpty()) continue;
        clearance.take(tag.frame);
        placed.push_back(tag);
    }
    const double em = picture.sizes.readingMm;
    for (PinnedTag& tag : tags) {
        if (!tag.frame.isEmpty()) continue;
        const PinnedReading* reading = picture.bench().findPinned(tag.id);
        const QSizeF size(pinnedWidth(tag, picture.sizes), kTagHeightEm * em);
        QPointF middle;
        for (const TagEnd& end : tag.ends) middle += end.at / static_cast<double>(tag.ends.size());
        const auto* watts = reading ? std::get_if<WattsOf>(&reading->of) : nullptr;
        auto candidates = watts ? aroundBody(clearance.ground(), picture.bench().partIndex(watts->part), size)
                                : around(middle, size, em);
        dislikeHiding(candidates, size, tag.ends, placed);
        tag.frame = settle(candidates, tag.text, size, clearance).frame;
        if (watts) tag.ends.front().at = nearestOf(bodyOfId(picture, watts->part), tag.frame.center());
        placed.push_back(tag);
    }
}

}  // namespace tiepoint::ui
