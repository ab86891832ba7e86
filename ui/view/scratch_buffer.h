#pragma once
// An image for what is painted only to be kept elsewhere: one for each thread, so that no fresh memory is visited each time.

#include <QImage>

#include <algorithm>
#include <cstddef>
#include <vector>

namespace tiepoint::ui {

/// That of this thread, of the wanted size and transparent. Valid until the thread asks again.
inline QImage scratchBuffer(const QSize& size) {
    thread_local std::vector<QRgb> room;
    const auto pixels = static_cast<std::size_t>(size.width()) * static_cast<std::size_t>(size.height());
    room.resize(std::max(room.size(), pixels));
    std::fill_n(room.begin(), pixels, 0U);
    return {reinterpret_cast<uchar*>(room.data()), size.width(), size.height(),
            static_cast<qsizetype>(size.width()) * static_cast<qsizetype>(sizeof(QRgb)),
            QImage::Format_ARGB32_Premultiplied};
}

}  // namespace tiepoint::ui
