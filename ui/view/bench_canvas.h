#pragma once
// Draws the bench of a view: the table, boards, parts and all live marks, as one picture that is kept from frame to frame.
//
// Layers of kept pixels (boards, metal and light under the parts, parts at rest, what glows and is pressed on them, words, the marks of the
// hand); arrows are stamped between them. A tick of the arrows puts together only the cells that they run through; a press also what it changed.
// Belongs to the window's thread; layers are painted side by side in others while it waits.

#include "ui/paint/finding_marks.h"
#include "ui/paint/flow_paths.h"
#include "ui/paint/label_places.h"
#include "ui/paint/picture.h"
#include "ui/paint/sprites.h"
#include "ui/scene/bench_scene.h"
#include "ui/view/do_together.h"
#include "ui/view/frame.h"
#include "ui/view/frame_stack.h"
#include "ui/view/patch_layer.h"

#include <array>
#include <functional>
#include <memory>
#include <optional>
#include <span>

namespace tiepoint::ui {

class BenchCanvas {
public:
    BenchCanvas();

    /// Follows what the picture shows now; paints the layers where it differs. Nothing is on screen yet.
    void update(const Picture& picture, const Frame& frame, const BenchScene& scene, const std::vector<int>& litNets);
    /// How far all that is on the screen has slid since this was last asked, in device pixels: to be moved there before what `takeStale` says
    /// is shown. Else, and in any case after asking, the whole viewport counts as stale.
    QPoint takeSlide();
    /// What looks otherwise than when this was last asked, in device pixels of the viewport.
    QRegion takeStale();
    /// Puts a part of it together, in device pixels of the viewport, straight into the pixels of what the painter paints on if it has some.
    void show(QPainter& painter, const QRegion& exposed) const;
    /// The table top alone, the ground of a picture that is being zoomed, over the viewport in logical pixels.
    void showTable(QPainter& painter, const QRect& viewport) const;
    /// The table is one surface under the whole window, whose place in the viewport's device pixels this is.
    void setTableArea(const QRect& window) { tableArea_ = window; }

    /// Where the symbols of the picture's findings stand, mm; none until these are drawn.
    std::span<const FindingMark> findingMarks(const Picture& picture) const;
    /// Makes a few sprites ahead of their use. False once all are made.
    bool prewarm();
    /// Pixels painted anew so far, for tests and benchmarks; those put together from kept ones don't count.
    long long paintedPixels();

private:
    void followLook(const Picture& picture, const Frame& frame);
    /// The rows in which the table looks otherwise than so many rows above.
    QRegion tableDiffering(int slide) const;
    void followTable(const Theme& theme);
    std::array<PatchLayer*, 6> layers() { return {&boards_, &under_, &items_, &parts_, &words_, &hand_}; }
    /// Paints what has changed; `beside`: other work to be done at the same time.
    void followLayers(const Picture& picture, const BenchScene& scene, const std::vector<int>& litNets, Work beside);
    /// Takes the arrows of this moment. False if they are those of before.
    bool followMarks(const Picture& picture);
    void placeArrows();
    const std::vector<Label>& ids(const Picture& picture);
    void compose(QImage& target, const QRegion& region, QPoint shift) const;

    std::shared_ptr<const Layout> layout_;
    std::shared_ptr<const Table> arranged_;
    WordSizes sizes_;  ///< for which ground_ was prepared
    std::shared_ptr<const Snapshot> snapshot_;
    std::shared_ptr<const std::vector<Change>> changes_;
    std::shared_ptr<const std::vector<PinnedTag>> pinned_;
    std::shared_ptr<const std::vector<Finding>> findings_;
    std::shared_ptr<const Bench> mended_;
    std::vector<FindingMark> findingMarks_;  ///< as drawn last
    std::optional<FlowPaths> paths_;
    std::optional<Clearance> ground_;
    std::vector<Label> ids_;
    QByteArray idsKey_, boardsKey_, underKey_, itemsKey_, partsKey_, wordsKey_, handKey_, arrowsKey_;
    const Theme* theme_ = nullptr;
    Frame frame_;
    Arrows arrows_ = Arrows::Off;
    bool wasCarrying_ = false;
    std::unique_ptr<ArrowSprites> sprites_;
    TileStore tiles_;
    PatchStamps patchStamps_{tiles_};
    PatchLayer boards_{tiles_, patchStamps_}, under_{tiles_, patchStamps_}, items_{tiles_, patchStamps_},
        parts_{tiles_, patchStamps_}, words_{tiles_, patchStamps_}, hand_{tiles_, patchStamps_};
    QRegion stale_;  ///< of the viewport
    QPoint slide_;
    QRect tableArea_, tableDrawn_;
    std::vector<QRgb> table_;                      ///< of one colour along a row: the row's
    std::array<std::vector<ArrowMark>, 2> marks_;  ///< under and over the parts
    std::array<StampGrid, 2> stamps_;              ///< of these
};

}  // namespace tiepoint::ui
