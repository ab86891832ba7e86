#pragma once
// Pixels of a piece of a plane that wanders and grows: what both pieces share keeps its pixels, and the memory stays. Fresh memory costs a
// visit of the system for each of its pages, which on some machines takes longer than painting them.

#include <QImage>
#include <QRect>

#include <cstddef>
#include <cstdlib>
#include <memory>

namespace tiepoint::ui {

class KeptPixels {
public:
    const QRect& area() const { return area_; }
    /// The pixels of the area, premultiplied. Valid until the area changes.
    QImage& image() { return image_; }
    const QImage& image() const { return image_; }
    /// Takes another area. The pixels outside of what it shares with the one before are undefined. `most`: how large it may well become.
    void reach(const QRect& area, const QSize& most = {});
    /// Forgets the pixels but not the memory.
    void clear() { area_ = {}; }

private:
    struct Free {
        void operator()(QRgb* pixels) const { std::free(pixels); }
    };
    using Memory = std::unique_ptr<QRgb[], Free>;
    static Memory allocate(std::size_t pixels);
    QRgb* at(QPoint place, const QRect& area) const;
    void moveRows(const QRect& shared, const QRect& to);

    Memory memory_;
    QSize room_;  ///< for which there is memory
    QRect area_;
    QImage image_;
};

}  // namespace tiepoint::ui
