#include "ui/view/frame_stack.h"

#include "ui/paint/stamp.h"

#include <algorithm>
#include <iterator>
#include <utility>

namespace tiepoint::ui {
namespace {

constexpr int kCell = StampGrid::kCell;

/// Calls `work` with the pieces of a rectangle in the squares of the grid.
template <class Work>
void forPieces(const QRect& rect, Work work) {
    for (int top = rect.top(); top <= rect.bottom(); top = (top / kCell + 1) * kCell) {
        const int bottom = std::min(rect.bottom(), (top / kCell + 1) * kCell - 1);
        for (int left = rect.left(); left <= rect.right(); left = (left / kCell + 1) * kCell)
            work(QRect(QPoint(left, top), QPoint(std::min(rect.right(), (left / kCell + 1) * kCell - 1), bottom)));
    }
}

void fillRows(QImage& target, const QRect& piece, const std::vector<QRgb>& rows, QPoint shift) {
    for (int y = piece.top(); y <= piece.bottom(); ++y)
        std::fill_n(reinterpret_cast<QRgb*>(target.scanLine(y + shift.y())) + piece.left() + shift.x(), piece.width(), rows[static_cast<std::size_t>(y)]);
}

}  // namespace

std::vector<QRect> StampGrid::replace(std::vector<Stamp> stamps, QPoint origin, const QSize& viewport) {
    stamps_ = std::move(stamps);
    const auto before = std::exchange(keys_, {});
    keys_.reserve(stamps_.size());
    for (const Stamp& stamp : stamps_) keys_.emplace_back(Key{stamp.picture.cacheKey(), stamp.at.x(), stamp.at.y()}, stamp.rect());
    const auto byKey = [](const auto& a, const auto& b) { return a.first < b.first; };
    std::sort(keys_.begin(), keys_.end(), byKey);
    std::vector<std::pair<Key, QRect>> differing;
    std::set_symmetric_difference(before.begin(), before.end(), keys_.begin(), keys_.end(), std::back_inserter(differing), byKey);
    std::vector<QRect> changed;
    changed.reserve(differing.size());
    for (const auto& [key, rect] : differing) changed.push_back(rect.translated(origin));
    for (Stamp& stamp : stamps_) stamp.at += origin;
    sort(viewport);
    return changed;
}

void StampGrid::sort(const QSize& viewport) {
    columns_ = viewport.width() / kCell + 1;
    byCell_.resize(static_cast<std::size_t>(columns_ * (viewport.height() / kCell + 1)));
    for (std::vector<int>& cell : byCell_) cell.clear();
    for (int i = 0; i < static_cast<int>(stamps_.size()); ++i) {
        const QRect rect = stamps_[static_cast<std::size_t>(i)].rect() & QRect(QPoint(0, 0), viewport);
        for (int y = rect.top() / kCell; !rect.isEmpty() && y <= rect.bottom() / kCell; ++y) {
            for (int x = rect.left() / kCell; x <= rect.right() / kCell; ++x) byCell_[static_cast<std::size_t>(y * columns_ + x)].push_back(i);
        }
    }
}

void StampGrid::lay(QImage& target, const QRect& piece, QPoint shift) const {
    for (const int i : byCell_[static_cast<std::size_t>(piece.top() / kCell * columns_ + piece.left() / kCell)]) {
        const Stamp& stamp = stamps_[static_cast<std::size_t>(i)];
        stampOver(target, piece.translated(shift), stamp.at + shift, stamp.picture);
    }
}

void FrameStack::composePiece(QImage& target, const QRect& piece, bool solid, QPoint shift) const {
    const QRect onBench = piece.translated(-origin);
    const QPoint toTarget = origin + shift;
    if (solid) {
        ground.copy(target, onBench, toTarget);
    } else {
        fillRows(target, piece, table, shift);
        ground.lay(target, onBench, toTarget);
    }
    arrows[0].lay(target, piece, shift);
    parts.lay(target, onBench, toTarget);
    arrows[1].lay(target, piece, shift);
    words.lay(target, onBench, toTarget);
    hand.lay(target, onBench, toTarget);
}

void FrameStack::compose(QImage& target, const QRegion& region, QPoint shift) const {
    const QRegion solid = region & ground.opaque().translated(origin);
    for (const QRect& rect : solid) forPieces(rect, [&](const QRect& piece) { composePiece(target, piece, true, shift); });
    for (const QRect& rect : region - solid) forPieces(rect, [&](const QRect& piece) { composePiece(target, piece, false, shift); });
}

}  // namespace tiepoint::ui
