#pragma once
// Pixels of patches that look the same wherever they lie: painted once, then only moved. For what follows the
// hand, where hundreds of rings, strips and parts go from hole to hole. A cache object belongs to one layer;
// one thread at a time.

#include "ui/paint/patch.h"

#include <QHash>
#include <QImage>

#include <compare>

namespace tiepoint::ui {

class PatchStamps {
public:
    /// Lays a movable patch over pixels, its place rounded to half a pixel, or to a pixel where these are small. `origin`: where the bench's
    /// origin is in the target; nothing is laid outside of `clip`.
    void lay(QImage& target, const QRect& clip, QPoint origin, const Patch& patch, double pixelsPerMm);
    void clear() {
        stamps_.clear();
        pixels_ = 0;
    }
    /// Forgets all if they take so much memory that most can't be in use.
    void trim();
    /// Patches painted so far, for tests.
    int painted() const { return painted_; }

private:
    struct Key {
        std::uint64_t look;
        int halfX, halfY;   ///< whether the corner lies in the middle of a pixel
        int width, height;  ///< in pixels
        friend bool operator==(const Key&, const Key&) = default;
        friend std::size_t qHash(const Key& key, std::size_t seed) { return qHashMulti(seed, key.look, key.halfX, key.halfY, key.width, key.height); }
    };
    QImage paint(const Patch& patch, const Key& key, double pixelsPerMm) const;

    QHash<Key, QImage> stamps_;
    qsizetype pixels_ = 0;  ///< of all stamps
    int painted_ = 0;
};

}  // namespace tiepoint::ui
