#include "ui/view/bench_canvas.h"

#include "ui/paint/bench_painter.h"
#include "ui/view/cell_grid.h"
#include "ui/view/plain_frame.h"

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

}  // namespace

BenchCanvas::Painting BenchCanvas::usualPainting() {
    return qEnvironmentVariable("TIEPOINT_PAINTING") == QLatin1String("plain") ? Painting::Plain : Painting::Kept;
}

BenchCanvas::BenchCanvas(Painting painting) : painting_(painting) {
    QThreadPool::globalInstance()->setExpiryTimeout(-1);  // its threads keep their letters
}

void BenchCanvas::update(const Picture& picture, const Frame& frame, const BenchScene& scene,
                         const std::vector<int>& litNets) {
    const bool sameArrows = picture_ == picture && frame_ == frame && sprites_;
    followLook(picture, frame);
    followTable(*picture.theme);
    const bool changed = followPatches(picture, scene, litNets);
    if (!sameArrows) followMarks(picture);
    if (painting_ == Painting::Plain) {
        if (changed || !sameArrows) stale_ = QRect(QPoint(0, 0), frame_.viewport);
        slide_ = {};
        return;
    }
    Work sprites;
    if (!sameArrows) sprites = sprites_->prepare(marks_);
    followLayers(changed, std::move(sprites));
    if (!sameArrows) placeArrows();
}

QPoint BenchCanvas::takeSlide() { return std::exchange(slide_, {}); }

QRegion BenchCanvas::takeStale() { return std::exchange(stale_, {}) & QRect(QPoint(0, 0), frame_.viewport); }

void BenchCanvas::followLook(const Picture& picture, const Frame& frame) {
    const bool sameTheme = picture_ && picture_->theme == picture.theme;
    const bool sameScale = sameTheme && frame_.pixelsPerMm == frame.pixelsPerMm && sprites_;
    if (!sameScale || picture_->views.arrows != picture.views.arrows)
        sprites_ = std::make_unique<ArrowSprites>(*picture.theme, frame.pixelsPerMm,
                                                  picture.views.arrows == Arrows::Electrons);
    if (!sameScale) {
        for (PatchLayer& layer : layers_) layer.clear();
        patchSprites_.begin(*picture.theme, frame.pixelsPerMm);
    }
    if (!sameTheme) tableDrawn_ = {};
    Frame slid = frame_;
    slid.origin = frame.origin;
    const QRect all(QPoint(0, 0), frame.viewport);
    if (!sameTheme || slid != frame) {
        stale_ = all;
        slide_ = {};
    } else if (const QPoint slide = frame.origin - frame_.origin; !slide.isNull()) {
        slide_ += slide;
        stale_ = stale_.translated(slide) | (QRegion(all) - all.translated(slide)) |
                 (tableDiffering(slide.y()) - layers_.front().opaque().translated(frame.origin));
    }
    frame_ = frame;
    if (!ground_ || !ground_->isOf(picture)) ground_.emplace(picture);
}

std::span<const FindingMark> BenchCanvas::findingMarks(const Picture& picture) const {
    if (!picture_ || picture.findings != picture_->findings) return {};
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

bool BenchCanvas::followPatches(const Picture& picture, const BenchScene& scene, const std::vector<int>& litNets) {
    const int beat = soundingBeat(picture);
    Patches items;
    scene.addItems(items);
    if (picture_) picture_->phaseMm = picture.phaseMm;  // arrows are no patches
    if (picture_ == picture && litNets_ == litNets && beat_ == beat && items == items_) return false;
    picture_ = picture;
    litNets_ = litNets;
    beat_ = beat;
    boards_.clear();
    scene.addBoards(boards_);
    items_ = std::move(items);
    under_.clear();
    addUnderParts(under_, picture, ground_->paths, litNets);
    onParts_.clear();
    addOnParts(onParts_, picture, ground_->paths);
    wordPlacings_ +=
        words_.follow(wordsInput(picture, ground_->words), [this](Patches& patches, const WordsInput& input) {
            findingMarks_ = addWords(patches, input, ground_->clearance);
        });
    mend_.follow(mendInput(picture), addMended);
    group_.follow(groupInput(picture), addCarriedGroup);
    built_.follow(builtInput(picture), addBuilt);
    hand_ = built_.patches;
    addHandMarks(hand_, picture, mend_.patches, group_.patches);
    return true;
}

const Patches& BenchCanvas::patchesOf(PictureLayer layer) const {
    switch (layer) {
        case PictureLayer::Boards:
            return boards_;
        case PictureLayer::Under:
            return under_;
        case PictureLayer::Items:
            return items_;
        case PictureLayer::OnParts:
            return onParts_;
        case PictureLayer::Words:
            return words_.patches;
        case PictureLayer::Hand:
            break;
    }
    return hand_;
}

void BenchCanvas::followLayers(bool changed, Work beside) {
    const QRect content =
        QTransform::fromScale(frame_.pixelsPerMm, frame_.pixelsPerMm).mapRect(frame_.contentMm).toAlignedRect();
    const QRect sight = QRect(-frame_.origin, frame_.viewport) & content;
    const int marginX = frame_.viewport.width() / kMarginShare, marginY = frame_.viewport.height() / kMarginShare;
    const QRect room = sight.adjusted(-marginX, -marginY, marginX, marginY) & content;
    for (std::size_t i = 0; i < layers_.size(); ++i) {
        if (changed || !layers_[i].reaches(sight)) {
            layerChanges_[i] += layers_[i].take(patchesOf(static_cast<PictureLayer>(i)), sight, room);
        } else {
            layers_[i].keep();
        }
    }
    // What is dear is made piece by piece, by whichever thread is free; then it is only laid.
    Work pieces = std::move(beside), bands;
    for (PatchLayer& layer : layers_) std::ranges::move(layer.preparations(), std::back_inserter(pieces));
    parallelFor(pieces);
    for (PatchLayer& layer : layers_) std::ranges::move(layer.layings(), std::back_inserter(bands));
    parallelFor(bands);
    for (PatchLayer& layer : layers_) stale_ |= layer.changed().translated(frame_.origin);
    if (!pieces.empty()) patchSprites_.trim();
}

void BenchCanvas::followMarks(const Picture& picture) {
    const Snapshot* live = picture.live();
    for (const Layer layer : {Layer::UnderParts, Layer::OverParts}) {
        std::vector<ArrowMark>& marks = marks_[static_cast<std::size_t>(layer)];
        marks.clear();
        if (live)
            ground_->paths.marks(*live, picture.views.arrows, fullScaleAmpere(picture), picture.phaseMm, layer, marks);
    }
}

void BenchCanvas::placeArrows() {
    CellGrid cells(QRect(QPoint(0, 0), frame_.viewport), kArrowCell);
    const QTransform toPixels = QTransform::fromScale(frame_.pixelsPerMm, frame_.pixelsPerMm);
    for (std::size_t layer = 0; layer < marks_.size(); ++layer)
        for (const QRect& rect :
             arrowSprites_[layer].replace(sprites_->place(toPixels, marks_[layer]), frame_.origin, frame_.viewport))
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
    if (painting_ == Painting::Plain) return composePlainly(target, region, shift);
    const FrameStack stack{table_, layers_, arrowSprites_, frame_.origin};
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
    parallelFor(work);
}

void BenchCanvas::composePlainly(QImage& target, const QRegion& region, QPoint shift) const {
    QImage frame(frame_.viewport, QImage::Format_RGB32);
    PlainFrame plain(frame, *picture_->theme, frame_.pixelsPerMm, frame_.origin);
    const bool electrons = picture_->views.arrows == Arrows::Electrons;
    plain.paintTable(table_);
    for (const PictureLayer layer : {PictureLayer::Boards, PictureLayer::Under}) plain.paintPatches(patchesOf(layer));
    plain.paintArrows(marks_[0], electrons);
    for (const PictureLayer layer : {PictureLayer::Items, PictureLayer::OnParts}) plain.paintPatches(patchesOf(layer));
    plain.paintArrows(marks_[1], electrons);
    for (const PictureLayer layer : {PictureLayer::Words, PictureLayer::Hand}) plain.paintPatches(patchesOf(layer));
    const PixelRows<QRgb> to = rowsOf(target);
    const PixelRows<const QRgb> from = rowsOf(std::as_const(frame));
    for (const QRect& rect : region)
        copyBlock({to.at(rect.topLeft() + shift), to.stride}, {from.at(rect.topLeft()), from.stride}, rect.size());
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

long long BenchCanvas::laidPixels() const {
    long long pixels = 0;
    for (const PatchLayer& layer : layers_) pixels += layer.laidPixels();
    return pixels;
}

}  // namespace tiepoint::ui
