#include "ui/view/kept_pixels.h"

#ifdef __linux__
#include <sys/mman.h>
#endif

#include <algorithm>
#include <cstdlib>
#include <cstring>
#include <new>
#include <utility>

namespace tiepoint::ui {
namespace {

constexpr std::size_t kLargePage = std::size_t{2} << 20;  ///< bytes

}  // namespace

KeptPixels::Memory KeptPixels::allocate(std::size_t pixels) {
    const std::size_t bytes = (pixels * sizeof(QRgb) + kLargePage - 1) / kLargePage * kLargePage;
    Memory memory(static_cast<QRgb*>(std::aligned_alloc(kLargePage, bytes)));
    if (!memory) throw std::bad_alloc();
#ifdef __linux__
    madvise(memory.get(), bytes, MADV_HUGEPAGE);  // a wish: without large pages it is slower the first time
#endif
    return memory;
}

QRgb* KeptPixels::at(QPoint place, const QRect& area) const {
    const QPoint inside = place - area.topLeft();
    return memory_.get() + static_cast<std::ptrdiff_t>(inside.y()) * room_.width() + inside.x();
}

void KeptPixels::moveRows(const QRect& shared, const QRect& to) {
    // Downwards from the last row, so that none is overwritten before it has moved.
    const bool down = to.top() < area_.top();
    for (int i = 0; i < shared.height(); ++i) {
        const QPoint row(shared.left(), down ? shared.bottom() - i : shared.top() + i);
        std::memmove(at(row, to), at(row, area_), static_cast<std::size_t>(shared.width()) * sizeof(QRgb));
    }
}

void KeptPixels::reach(const QRect& area, const QSize& most) {
    if (area == area_) return;
    const QRect shared = area & area_;
    if (area.width() <= room_.width() && area.height() <= room_.height()) {
        moveRows(shared, area);
    } else {
        const Memory before = std::move(memory_);
        const QSize roomBefore = room_;
        room_ = room_.expandedTo(area.size()).expandedTo(most);
        memory_ = allocate(static_cast<std::size_t>(room_.width()) * static_cast<std::size_t>(room_.height()));
        for (int y = shared.top(); y <= shared.bottom(); ++y) {
            const QRgb* from = before.get() + static_cast<std::ptrdiff_t>(y - area_.top()) * roomBefore.width() + shared.left() - area_.left();
            std::memcpy(at({shared.left(), y}, area), from, static_cast<std::size_t>(shared.width()) * sizeof(QRgb));
        }
    }
    area_ = area;
    image_ = QImage(reinterpret_cast<uchar*>(memory_.get()), area.width(), area.height(), static_cast<qsizetype>(room_.width()) * static_cast<qsizetype>(sizeof(QRgb)),
                    QImage::Format_ARGB32_Premultiplied);
}

}  // namespace tiepoint::ui
