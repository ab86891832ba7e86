// Leaders of tags run under the parts, so that they cover nothing; the rings in which they end lie over them.

#include "ui/paint/label_painter.h"
#include "ui/paint/label_places.h"
#include "ui/paint/live_layers.h"
#include "ui/paint/pinned_places.h"
#include "ui/paint/shade.h"
#include "ui/paint/tag_ground.h"

#include <cmath>

namespace tiepoint::ui {
namespace {

constexpr double kRingLineMm = 0.26, kRingCasingMm = 0.66;

struct LeaderMark {
    Point from, to;
    double breadth;
    bool dotted = false;
    void paint(QPainter& painter, const Theme& theme) const {
        QPen casing = outlinePen(theme.arrowCasing, kCasingOfLeader * breadth);
        casing.setCapStyle(Qt::FlatCap);
        painter.setPen(casing);
        painter.drawLine(toQt(from), toQt(to));
        QPen line = outlinePen(dotted ? theme.dimText : theme.text, breadth);
        if (dotted) line.setDashPattern({0.01, 2});
        line.setCapStyle(dotted ? Qt::RoundCap : Qt::FlatCap);
        painter.setPen(line);
        painter.drawLine(toQt(from), toQt(to));
    }
    friend bool operator==(const LeaderMark&, const LeaderMark&) = default;
};

struct RingMark {
    bool dim;
    void paint(QPainter& painter, const Theme& theme) const {
        painter.setBrush(Qt::NoBrush);
        painter.strokePath(disc({0, 0}, kTagRingMm), outlinePen(theme.arrowCasing, kRingCasingMm));
        painter.strokePath(disc({0, 0}, kTagRingMm), outlinePen(dim ? theme.dimText : theme.text, kRingLineMm));
    }
    friend bool operator==(const RingMark&, const RingMark&) = default;
};

void addLeader(Patches& patches, const QRectF& frame, QPointF end, double breadth, bool dotted) {
    const QPointF from = nearestOf(frame, end);
    const QPointF away = end - from;
    const double length = std::hypot(away.x(), away.y());
    if (length <= kTagRingMm) return;
    const QPointF to = end - away * (kTagRingMm / length);
    const double room = kCasingOfLeader * breadth;
    patches.push_back(fixedPatch(QRectF(from, to).normalized().adjusted(-room, -room, room, room),
                                 LeaderMark{fromQt(from), fromQt(to), breadth, dotted}));
}

}  // namespace

void addLeaders(Patches& patches, const Picture& picture) {
    const double breadth = picture.sizes.leaderMm;
    if (picture.pinned) {
        for (const PinnedTag& tag : *picture.pinned)
            for (const TagEnd& end : tag.ends) addLeader(patches, tag.frame, end.at, breadth, false);
    }
    if (!picture.netTags) return;
    for (const NetTag& tag : *picture.netTags)
        addLeader(patches, toQt(tag.frame), toQt(tag.ring), breadth, tag.isFloating);
}

void addNetTags(Patches& patches, const std::vector<NetTag>& tags, const WordSizes& sizes) {
    constexpr double kRoomMm = kTagRingMm + kRingCasingMm;
    for (const NetTag& tag : tags) {
        patches.push_back(
            movablePatch(tag.ring, {-kRoomMm, -kRoomMm, 2 * kRoomMm, 2 * kRoomMm}, RingMark{tag.isFloating}));
        patches.push_back(tagPatch(toQt(tag.frame), tag.text, readingLettering(sizes),
                                   tag.isFloating  ? TagEdge::Floating
                                   : tag.isChanged ? TagEdge::Accent
                                                   : TagEdge::Reading));
    }
}

}  // namespace tiepoint::ui
