#include "ui/view/bench_canvas.h"

#include "ui/paint/bench_painter.h"
#include "ui/paint/live_layers.h"
#include "ui/view/cell_grid.h"
#include "ui/view/layer_keys.h"

#include <QPaintEngine>
#include <QThread>
#include <QThreadPool>

#include <algorithm>
#include <cmath>
#include <iterator>
#include <utility>

namespace tiepoint::ui {
namespace {

constexpr int kSmallFrame = 1'000'000;  ///< pixels; up to here handing out the work costs more than it saves
constexpr int kBandsPerThread = 2, kMostBands = 8;
constexpr int kArrowCell = 16;  ///< pixels; changes by arrows are gathered in cells
constexpr int kMarginShare =
    32;  ///< of the viewport's size, on each side, so that a pan paints neither in each frame nor much in one

/// Something is in the hand: its place isn't compared, it is drawn anew each time.
bool isCarrying(const Marks& marks) { return marks.carried || marks.drawn || marks.drawnFree || marks.probe; }

}  // namespace

BenchCanvas::BenchCanvas() {
    QThreadPool::globalInstance()->setExpiryTimeout(-1);  // its threads keep their letters
}

void BenchCanvas::update(const Picture& picture, const Frame& frame, const BenchScene& scene,
                         const std::vector<int>& litNets) {
    followLook(picture, frame);
    followTable(*picture.theme);
    const bool moved = followMarks(picture);
    Work sprites;
    if (moved) sprites = sprites_->prepare(marks_);
    followLayers(picture, scene, litNets, std::move(sprites));
    if (moved) placeArrows();
}

QPoint BenchCanvas::takeSlide() { return std::exchange(slide_, {}); }

QRegion BenchCanvas::takeStale() { return std::exchange(stale_, {}) & QRect(QPoint(0, 0), frame_.viewport); }

void BenchCanvas::followLook(const Picture& picture, const Frame& frame) {
    const bool sameTheme = theme_ == picture.theme, sameScale = frame_.pixelsPerMm == frame.pixelsPerMm && sprites_;
    if (!sameTheme || !sameScale || arrows_ != picture.views.arrows) {
        sprites_ = std::make_unique<ArrowSprites>(*picture.theme, frame.pixelsPerMm,
                                                  picture.views.arrows == Arrows::Electrons);
        arrowsKey_ = {};
    }
    if (!sameTheme || !sameScale) patchStamps_.clear();
    if (!sameTheme) {
        for (PatchLayer* layer : layers()) layer->clear();
        boardsKey_ = underKey_ = itemsKey_ = partsKey_ = wordsKey_ = handKey_ = QByteArray();
        tableDrawn_ = {};
    }
    Frame slid = frame_;
    slid.origin = frame.origin;
    const QRect all(QPoint(0, 0), frame.viewport);
    if (!sameTheme || slid != frame) {
        stale_ = all;
        slide_ = {};
    } else if (const QPoint slide = frame.origin - frame_.origin; !slide.isNull()) {
        slide_ += slide;
        stale_ = stale_.translated(slide) | (QRegion(all) - all.translated(slide)) |
                 (tableDiffering(slide.y()) - boards_.opaque().translated(frame.origin));
    }
    theme_ = picture.theme;
    frame_ = frame;
    arrows_ = picture.views.arrows;
    if (layout_ != picture.layout || arranged_ != picture.table || sizes_ != picture.sizes) {
        layout_ = picture.layout;
        arranged_ = picture.table;
        sizes_ = picture.sizes;
        paths_.emplace(picture);
        ground_.emplace(picture);
    }
    snapshot_ = picture.snapshot;
    changes_ = picture.changes;
    pinned_ = picture.pinned;
    findings_ = picture.findings;
    mended_ = picture.marks.mended;
}

std::span<const FindingMark> BenchCanvas::findingMarks(const Picture& picture) const {
    if (picture.findings != findings_) return {};
    return findingMarks_;
}

QRegion BenchCanvas::tableDiffering(int slide) const {
    // The bench slides over the table, which stays. Its shades differ in few rows.
    QRegion rows;
    const auto colour = [this](int y) { return table_[static_cast<std::size_t>(y)]; };
    const int height = static_cast<int>(table_.size());
    for (int y = std::max(0, slide); y < height + std::min(0, slide); ++y) {
        if (colour(y) != colour(y - slide)) rows |= QRect(0, y, frame_.viewport.width(), 1);
    }
    return rows;
}

void BenchCanvas::followTable(const Theme& theme) {
    const auto height = static_cast<std::size_t>(frame_.viewport.height());
    if (tableDrawn_ == tableArea_ && table_.size() == height) return;
    tableDrawn_ = tableArea_;
    QImage column(1, frame_.viewport.height(), QImage::Format_RGB32);
    QPainter painter(&column);
    paintTableTop(painter, theme, tableArea_);
    painter.end();
    table_.resize(height);
    for (std::size_t y = 0; y < height; ++y)
        table_[y] = *reinterpret_cast<const QRgb*>(column.constScanLine(static_cast<int>(y)));
    stale_ = QRect(QPoint(0, 0), frame_.viewport);
}

const std::vector<Label>& BenchCanvas::ids(const Picture& picture) {
    if (QByteArray key = idsKey(picture); key != idsKey_) {
        idsKey_ = std::move(key);
        Clearance clearance = *ground_;
        takePinned(picture, clearance);
        ids_ = placeIds(picture, clearance);
    }
    return ids_;
}

void BenchCanvas::followLayers(const Picture& picture, const BenchScene& scene, const std::vector<int>& litNets,
                               Work beside) {
    const QRect content =
        QTransform::fromScale(frame_.pixelsPerMm, frame_.pixelsPerMm).mapRect(frame_.contentMm).toAlignedRect();
    const QRect sight = QRect(-frame_.origin, frame_.viewport) & content;
    const int marginX = frame_.viewport.width() / kMarginShare, marginY = frame_.viewport.height() / kMarginShare;
    const QRect room = sight.adjusted(-marginX, -marginY, marginX, marginY) & content;
    const auto follow = [&](PatchLayer& layer, QByteArray& known, QByteArray key, bool always, auto add) {
        if (!always && key == known && layer.reaches(sight, frame_.pixelsPerMm)) {
            layer.keep();
            return;
        }
        known = std::move(key);
        Patches patches;
        add(patches);
        layer.take(std::move(patches), sight, room, frame_.pixelsPerMm);
    };
    follow(boards_, boardsKey_, boardsKey(picture), false, [&](Patches& patches) { scene.addBoards(patches); });
    follow(under_, underKey_, underKey(picture, litNets), false,
           [&](Patches& patches) { addUnderParts(patches, picture, *paths_, litNets); });
    follow(items_, itemsKey_, QByteArray::number(static_cast<qulonglong>(scene.changes())), false,
           [&](Patches& patches) { scene.addItems(patches); });
    follow(parts_, partsKey_, partsKey(picture), false,
           [&](Patches& patches) { addOnParts(patches, picture, *paths_); });
    follow(words_, wordsKey_, wordsKey(picture), false,
           [&](Patches& patches) { findingMarks_ = addWords(patches, picture, *ground_, ids(picture)); });
    follow(hand_, handKey_, marksKey(picture), isCarrying(picture.marks) || wasCarrying_,
           [&](Patches& patches) { addHandMarks(patches, picture); });
    wasCarrying_ = isCarrying(picture.marks);
    // What is dear is made piece by piece, by whichever thread is free; then it is only laid.
    Work pieces = std::move(beside), bands;
    for (PatchLayer* layer : layers()) std::ranges::move(layer->preparations(), std::back_inserter(pieces));
    doTogether(pieces);
    for (PatchLayer* layer : layers()) std::ranges::move(layer->paintings(), std::back_inserter(bands));
    doTogether(bands);
    for (PatchLayer* layer : layers()) {
        layer->finish();
        stale_ |= layer->changed().translated(frame_.origin);
    }
    if (!bands.empty()) patchStamps_.trim();
}

bool BenchCanvas::followMarks(const Picture& picture) {
    QByteArray key = arrowsKey(picture, frame_);
    if (key == arrowsKey_) return false;
    arrowsKey_ = std::move(key);
    const Snapshot* live = picture.live();
    for (const Layer layer : {Layer::UnderParts, Layer::OverParts}) {
        std::vector<ArrowMark>& marks = marks_[static_cast<std::size_t>(layer)];
        marks.clear();
        if (live) paths_->marks(*live, picture.views.arrows, fullScaleAmpere(picture), picture.phaseMm, layer, marks);
    }
    return true;
}

void BenchCanvas::placeArrows() {
    CellGrid cells(QRect(QPoint(0, 0), frame_.viewport), kArrowCell);
    const QTransform toPixels = QTransform::fromScale(frame_.pixelsPerMm, frame_.pixelsPerMm);
    for (std::size_t layer = 0; layer < marks_.size(); ++layer)
        for (const QRect& rect :
             stamps_[layer].replace(sprites_->place(toPixels, marks_[layer]), frame_.origin, frame_.viewport))
            cells.add(rect);
    stale_ |= cells.region();
}

void BenchCanvas::show(QPainter& painter, const QRegion& exposed) const {
    const QTransform toDevice = painter.deviceTransform();
    auto* screen = dynamic_cast<QImage*>(painter.paintEngine()->paintDevice());
    const bool isPlain =
        screen &&
        (screen->format() == QImage::Format_RGB32 || screen->format() == QImage::Format_ARGB32_Premultiplied) &&
        toDevice.m11() == frame_.devicePixelRatio && toDevice.m22() == frame_.devicePixelRatio;
    if (isPlain) {
        const QPoint shift(static_cast<int>(std::lround(toDevice.dx())), static_cast<int>(std::lround(toDevice.dy())));
        QRegion within = screen->rect();
        if (const QRegion clip = painter.paintEngine()->systemClip(); !clip.isEmpty()) within &= clip;
        return compose(*screen, exposed & within.translated(-shift) & QRect(QPoint(0, 0), frame_.viewport), shift);
    }
    const QRect all = exposed.boundingRect() & QRect(QPoint(0, 0), frame_.viewport);
    QImage pixels(all.size(), QImage::Format_RGB32);
    compose(pixels, all, -all.topLeft());
    const double ratio = frame_.devicePixelRatio;
    painter.drawImage(QRectF(QPointF(all.topLeft()) / ratio, QSizeF(all.size()) / ratio), pixels, pixels.rect());
}

void BenchCanvas::compose(QImage& target, const QRegion& region, QPoint shift) const {
    if (region.isEmpty()) return;
    const FrameStack stack{table_, boards_, under_, items_, parts_, words_, hand_, stamps_, frame_.origin};
    // A large frame is put together by all processors, each a band of it.
    const QRect all = region.boundingRect();
    const int bands =
        areaOf(region) < kSmallFrame ? 1 : std::clamp(QThread::idealThreadCount() * kBandsPerThread, 1, kMostBands);
    Work work;
    const PixelRows<QRgb> pixels = rowsOf(target);
    for (int i = 0; i < bands; ++i) {
        const QRect band(all.left(), all.top() + all.height() * i / bands, all.width(),
                         all.height() * (i + 1) / bands - all.height() * i / bands);
        work.emplace_back([&, part = region & band] { stack.compose(pixels, part, shift); });
    }
    if (work.size() == 1) return work.front()();
    doTogether(work);
}

void BenchCanvas::showTable(QPainter& painter, const QRect& viewport) const {
    const double ratio = frame_.devicePixelRatio;
    for (auto row = table_.begin(); row != table_.end();) {
        const auto end = std::find_if(row, table_.end(), [row](QRgb colour) { return colour != *row; });
        const auto at = [&](auto place) { return static_cast<double>(place - table_.begin()) / ratio; };
        painter.fillRect(QRectF(viewport.left(), viewport.top() + at(row), viewport.width(), at(end) - at(row)),
                         QColor(*row));
        row = end;
    }
}

bool BenchCanvas::prewarm() {
    constexpr int kAtOnce = 8;
    return sprites_ && sprites_->prewarm(kAtOnce) > 0;
}

long long BenchCanvas::paintedPixels() {
    long long pixels = 0;
    for (const PatchLayer* layer : layers()) pixels += layer->paintedPixels();
    return pixels;
}

}  // namespace tiepoint::ui
