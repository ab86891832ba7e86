#pragma once
// Pixels of patches that look the same wherever they lie: painted once, then only moved. For what follows the
// hand, where hundreds of rings, strips and parts go from hole to hole; and so that many can be painted side by side. A cache object
// belongs to one layer; one thread at a time, except for the work that `prepare` returns.

#include "ui/paint/patch.h"

#include <QHash>
#include <QImage>

#include <compare>
#include <functional>
#include <vector>

namespace tiepoint::ui {

class PatchStamps {
public:
    /// Work that paints the stamps which are wanted for movable patches and not there yet, the largest first; to be done before the next
    /// `lay`, in whatever threads. The patches must stay until then.
    std::vector<std::function<void()>> prepare(const std::vector<const Patch*>& wanted, double pixelsPerMm);
    /// Lays a movable patch over pixels, its place rounded to half a pixel, or to a pixel where these are small. `origin`: where the bench's
    /// origin is in the target; nothing is laid outside of `clip`. False if the patch has no stamp, being too large for one: to be painted
    /// with its corner where a stamp's would be. In any thread.
    bool lay(QImage& target, const QRect& clip, QPoint origin, const Patch& patch, double pixelsPerMm) const;
    /// That corner, in pixels from the bench's origin.
    static QPointF roundedCorner(const Patch& patch, double pixelsPerMm);
    void clear();
    /// Forgets stamps that are too large to be kept, and all if they take so much memory that most can't be in use.
    void trim();

private:
    struct Key {
        std::uint64_t look;
        int halfX, halfY;   ///< whether the corner lies in the middle of a pixel
        int width, height;  ///< in pixels
        qsizetype area() const { return qsizetype{width} * height; }
        friend bool operator==(const Key&, const Key&) = default;
        friend std::size_t qHash(const Key& key, std::size_t seed) { return qHashMulti(seed, key.look, key.halfX, key.halfY, key.width, key.height); }
    };
    /// A stamp's key, and the pixel of its corner.
    struct Place {
        Key key;
        QPoint corner;
    };
    static Place placeOf(const Patch& patch, double pixelsPerMm);
    static QImage paint(const Patch& patch, const Key& key, double pixelsPerMm);

    QHash<Key, QImage> stamps_;
};

}  // namespace tiepoint::ui
