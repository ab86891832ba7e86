#pragma once
// Draws the layers of the bench that are no items: the table, the boards and all live marks, from caches and sprites.
//
// Under the items: the boards (kept), the metal, beds and halos over them (kept for one snapshot), arrows in strips (stamped each frame).
// Over the items: lit domes, pressed caps, figures (kept for one snapshot), arrows (stamped each frame), ids (kept for one bench),
// readings and flags (kept for one snapshot), the marks of the hand (drawn each frame). Belongs to the window's thread.

#include "ui/paint/flow_paths.h"
#include "ui/paint/picture.h"
#include "ui/paint/sprites.h"
#include "ui/view/cached_layer.h"

#include <memory>
#include <optional>

namespace tiepoint::ui {

class BenchCanvas {
public:
    void drawUnder(QPainter& painter, const Picture& picture, const Frame& frame, const std::vector<int>& litNets);
    void drawOver(QPainter& painter, const Picture& picture, const Frame& frame);
    /// Makes a few sprites ahead of their use. False once all are made.
    bool prewarm(const Picture& picture, const Frame& frame);

private:
    void prepare(const Picture& picture, const Frame& frame);
    void drawMetal(QPainter& layer, const Picture& picture, const Frame& frame);
    void stampArrows(QPainter& painter, const Picture& picture, const Frame& frame, Layer layer);

    std::shared_ptr<const Layout> layout_;
    std::shared_ptr<const Table> table_;
    std::shared_ptr<const Snapshot> snapshot_;
    std::optional<FlowPaths> paths_;
    const Theme* theme_ = nullptr;
    std::optional<SpriteScale> scale_;
    Arrows arrows_ = Arrows::Off;
    std::unique_ptr<ArrowSprites> arrowSprites_;
    std::unique_ptr<LightSprites> lightSprites_;
    CachedLayer boards_, metal_, under_, over_, ids_, words_;
    std::vector<ArrowMark> marks_;  ///< kept for its memory
};

}  // namespace tiepoint::ui
