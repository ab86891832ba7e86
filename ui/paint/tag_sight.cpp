#include "ui/paint/tag_sight.h"

#include "ui/paint/tag_ground.h"

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr double kFromEdgeEm = 0.4, kInsetEm = 0.3, kApartEm = 0.25;
constexpr double kAwayMm = kTagRingMm + 0.6;  ///< of a tag from the middle of its ring, at least

struct SightTag {
    QRectF frame;
    QRectF feet;  ///< around the ends
    bool moved = false;
};

class SightKeeper {
public:
    SightKeeper(const QRectF& seenMm, const WordSizes& sizes)
        : sight_(seenMm.adjusted(kFromEdgeEm * sizes.readingMm, kFromEdgeEm * sizes.readingMm,
                                 -kFromEdgeEm * sizes.readingMm, -kFromEdgeEm * sizes.readingMm)),
          insetMm_(kInsetEm * sizes.readingMm),
          apartMm_(kApartEm * sizes.readingMm) {}

    void keep(std::vector<SightTag>& tags) const {
        for (SightTag& tag : tags) {
            if (sight_.contains(tag.frame) || !sight_.contains(tag.feet.topLeft()) ||
                !sight_.contains(tag.feet.bottomRight()))
                continue;
            for (const QRectF& wished : {atEdge(tag), besideFeet(tag)}) {
                if (!sight_.contains(wished) || touches(tags, tag, wished)) continue;
                tag.frame = wished;
                tag.moved = true;
                break;
            }
        }
    }

private:
    bool touches(const std::vector<SightTag>& tags, const SightTag& tag, const QRectF& wished) const {
        return std::ranges::any_of(tags, [&](const SightTag& other) {
            return &other != &tag && other.frame.adjusted(-apartMm_, 0, apartMm_, 0).intersects(wished);
        });
    }

    /// Slid in, with its leaders still inside of its edges.
    void slideIn(QRectF& frame, const QRectF& feet) const {
        const double least = feet.right() + insetMm_ - frame.width(), most = feet.left() - insetMm_;
        const double left =
            std::clamp(frame.left(), sight_.left(), std::max(sight_.left(), sight_.right() - frame.width()));
        if (least <= most) frame.moveLeft(std::clamp(left, least, most));
    }

    static bool isAbove(const SightTag& tag) { return tag.frame.bottom() <= tag.feet.top(); }

    /// At the edge of the view towards which its leader runs, and never over its own feet.
    QRectF atEdge(const SightTag& tag) const {
        QRectF frame = tag.frame;
        if (isAbove(tag))
            frame.moveTop(std::min(std::max(frame.top(), sight_.top()), tag.feet.top() - kAwayMm - frame.height()));
        else if (frame.top() >= tag.feet.bottom())
            frame.moveBottom(
                std::max(std::min(frame.bottom(), sight_.bottom()), tag.feet.bottom() + kAwayMm + frame.height()));
        slideIn(frame, tag.feet);
        return frame;
    }

    /// On the other side of feet that lie too near the edge.
    QRectF besideFeet(const SightTag& tag) const {
        QRectF frame = tag.frame;
        if (isAbove(tag))
            frame.moveTop(tag.feet.bottom() + kAwayMm);
        else
            frame.moveBottom(tag.feet.top() - kAwayMm);
        slideIn(frame, tag.feet);
        return frame;
    }

    QRectF sight_;
    double insetMm_, apartMm_;
};

}  // namespace

void keepInSight(std::vector<PinnedTag>& pinned, std::vector<NetTag>& nets, const QRectF& seenMm,
                 const WordSizes& sizes) {
    std::vector<SightTag> tags;
    for (const PinnedTag& tag : pinned) {
        QRectF feet;
        for (const TagEnd& end : tag.ends) {
            if (&end == &tag.ends.front()) feet = QRectF(end.at, QSizeF(0, 0));
            feet.setLeft(std::min(feet.left(), end.at.x()));
            feet.setRight(std::max(feet.right(), end.at.x()));
            feet.setTop(std::min(feet.top(), end.at.y()));
            feet.setBottom(std::max(feet.bottom(), end.at.y()));
        }
        tags.push_back({tag.frame, feet});
    }
    for (const NetTag& tag : nets) tags.push_back({toQt(tag.frame), QRectF(toQt(tag.ring), QSizeF(0, 0))});
    SightKeeper(seenMm, sizes).keep(tags);
    std::size_t next = 0;
    for (PinnedTag& tag : pinned) tag.frame = tags[next++].frame;
    for (NetTag& tag : nets) {
        if (tags[next].moved) tag.frame = fromQt(tags[next].frame);
        ++next;
    }
}

}  // namespace tiepoint::ui
