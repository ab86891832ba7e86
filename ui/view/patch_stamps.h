#pragma once
// Pixels of patches that look the same wherever they lie: painted once, then only moved, between layers too. For what follows the
// hand, where hundreds of rings, strips and parts go from hole to hole; and so that many can be painted side by side. One thread
// at a time, except for the work that `prepare` returns, and for `lay`.

#include "ui/paint/patch.h"
#include "ui/view/tile_sheet.h"

#include <QHashFunctions>

#include <cstdint>
#include <functional>
#include <unordered_map>
#include <vector>

namespace tiepoint::ui {

class PatchStamps {
public:
    /// The store must outlive the stamps.
    explicit PatchStamps(TileStore& store) : store_(store) {}

    /// Work that paints the stamps which are wanted for movable patches and not there yet, the largest first; to be done before the next
    /// `lay`, in whatever threads. The patches must stay until then.
    std::vector<std::function<void()>> prepare(const std::vector<const Patch*>& wanted, double pixelsPerMm);
    /// Lays a movable patch over pixels, its place rounded to half a pixel, or to a pixel where these are small. `origin`: where the bench's
    /// origin is in the target; nothing is laid outside of `clip`. False if the patch has no stamp, being too large for one: to be painted
    /// with its corner where a stamp's would be. In any thread, while nothing is prepared.
    bool lay(PixelRows<QRgb> target, const QRect& clip, QPoint origin, const Patch& patch, double pixelsPerMm) const;
    /// That corner, in pixels from the bench's origin.
    static QPointF roundedCorner(const Patch& patch, double pixelsPerMm);
    void clear() { stamps_.clear(); }
    /// Forgets stamps that are too large to be kept and, if they take much memory, those that weren't wanted since the last call.
    void trim();

private:
    struct Key {
        std::uint64_t look;
        int halfX, halfY;   ///< whether the corner lies in the middle of a pixel
        int width, height;  ///< in pixels
        qsizetype area() const { return qsizetype{width} * height; }
        friend bool operator==(const Key&, const Key&) = default;
    };
    struct Hash {
        std::size_t operator()(const Key& key) const {
            return qHashMulti(0, key.look, key.halfX, key.halfY, key.width, key.height);
        }
    };
    struct Stamp {
        explicit Stamp(TileStore& store) : pixels(store) {}
        TileSheet pixels;
        bool wanted = true;  ///< since the last trim
    };
    /// A stamp's key, and the pixel of its corner.
    struct Place {
        Key key;
        QPoint corner;
    };
    static Place placeOf(const Patch& patch, double pixelsPerMm);
    static void paint(TileSheet& pixels, const Patch& patch, const Key& key, double pixelsPerMm);

    TileStore& store_;
    std::unordered_map<Key, Stamp, Hash> stamps_;  ///< whose places stay when others come
};

}  // namespace tiepoint::ui
