#pragma once
// Draws the bench of a view: the table, boards, parts and all live marks, as one picture that is kept from frame to frame.
//
// Layers of patches (boards, metal and light under the parts, parts at rest, what glows and is pressed on them, words, the marks of the
// hand); arrows are laid between them. A tick of the arrows puts together only the cells that they run through; a press also what it changed.
// Belongs to the window's thread; layers are painted side by side in others while it waits.

#include "ui/paint/built_marks.h"
#include "ui/paint/carried_group.h"
#include "ui/paint/live_layers.h"
#include "ui/paint/mend_painter.h"
#include "ui/paint/sprites.h"
#include "ui/scene/bench_scene.h"
#include "ui/view/frame.h"
#include "ui/view/frame_stack.h"
#include "ui/view/parallel_for.h"
#include "ui/view/patch_layer.h"

#include <array>
#include <memory>
#include <optional>
#include <span>

namespace tiepoint::ui {

/// From the table up.
enum class PictureLayer { Boards, Under, Items, OnParts, Words, Hand };
inline constexpr std::size_t kPictureLayers = 6;

/// Patches that are dear to find, and the input that they were found from.
template <class Input>
struct Found {
    std::optional<Input> from;
    Patches patches;
    /// Finds them anew if the input differs; whether it did. `find(patches, input)`.
    template <class Find>
    bool follow(Input input, Find find) {
        if (from == input) return false;
        from = std::move(input);
        patches.clear();
        find(patches, *from);
        return true;
    }
};

class BenchCanvas {
public:
    /// `Kept`: pixels are kept and put together, see frame_stack.h. `Plain`: a painter draws all patches in each frame, see plain_frame.h.
    enum class Painting { Kept, Plain };
    /// Kept, unless TIEPOINT_PAINTING is "plain".
    static Painting usualPainting();

    explicit BenchCanvas(Painting painting = usualPainting());

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
    /// Takes over how far another canvas' arrows have run, so that they go on from there.
    void goOnFrom(const BenchCanvas& other) { ground_ = other.ground_; }

    /// Pixels laid anew so far, for tests and benchmarks; those put together from kept ones don't count.
    long long laidPixels() const;
    /// How often a layer looked otherwise so far, and how often its words were placed anew.
    int changesOf(PictureLayer layer) const { return layerChanges_[static_cast<std::size_t>(layer)]; }
    int wordPlacings() const { return wordPlacings_; }

private:
    /// What is found once for a bench on its table, seen at some sizes.
    struct Ground {
        std::shared_ptr<const Layout> layout;
        std::shared_ptr<const Table> table;
        WordSizes sizes;
        FlowPaths paths;
        std::shared_ptr<const WordGround> words;
        Clearance clearance;
        explicit Ground(const Picture& picture)
            : layout(picture.layout),
              table(picture.table),
              sizes(picture.sizes),
              paths(picture),
              words(wordGround(picture)),
              clearance(words) {}
        bool isOf(const Picture& picture) const {
            return layout == picture.layout && table == picture.table && sizes == picture.sizes;
        }
    };

    void followLook(const Picture& picture, const Frame& frame);
    /// The rows in which the table looks otherwise than so many rows above.
    QRegion tableDiffering(int slide) const;
    void followTable(const Theme& theme);
    /// Finds what each layer shows. False if the picture is that of before but for the phase of its arrows.
    bool followPatches(const Picture& picture, const BenchScene& scene, const std::vector<int>& litNets);
    /// Paints what has changed; `beside`: other work to be done at the same time.
    void followLayers(bool changed, Work beside);
    /// Takes the arrows of this moment.
    void followMarks(const Picture& picture);
    void placeArrows();
    void compose(QImage& target, const QRegion& region, QPoint shift) const;
    void composePlainly(QImage& target, const QRegion& region, QPoint shift) const;
    const Patches& patchesOf(PictureLayer layer) const;

    Painting painting_;
    std::optional<Picture> picture_;  ///< as it was shown last
    std::vector<int> litNets_;
    int beat_ = -1;
    std::optional<Ground> ground_;
    Frame frame_;

    Patches boards_, under_, items_, onParts_, hand_;
    Found<WordsInput> words_;
    Found<MendInput> mend_;
    Found<BuiltInput> built_;
    Found<GroupInput> group_;
    std::vector<FindingMark> findingMarks_;  ///< as drawn last
    std::array<int, kPictureLayers> layerChanges_{};
    int wordPlacings_ = 0;

    std::unique_ptr<ArrowSprites> sprites_;
    TileStore tiles_;
    PatchSprites patchSprites_{tiles_};
    std::array<PatchLayer, kPictureLayers> layers_{
        PatchLayer{tiles_, patchSprites_}, PatchLayer{tiles_, patchSprites_}, PatchLayer{tiles_, patchSprites_},
        PatchLayer{tiles_, patchSprites_}, PatchLayer{tiles_, patchSprites_}, PatchLayer{tiles_, patchSprites_}};
    QRegion stale_;  ///< of the viewport
    QPoint slide_;
    QRect tableArea_, tableDrawn_;
    std::vector<QRgb> table_;                      ///< of one colour along a row: the row's
    std::array<std::vector<ArrowMark>, 2> marks_;  ///< under and over the parts
    std::array<SpriteGrid, 2> arrowSprites_;       ///< of these
};

}  // namespace tiepoint::ui
