#pragma once
// Memory for many pixels. Fresh memory costs a visit of the system for each of its pages, which on some machines takes longer than painting
// them; in large pages these are few.

#include <QRgb>

#include <cstddef>
#include <cstdlib>
#include <memory>

namespace tiepoint::ui {

inline constexpr std::size_t kLargePage = std::size_t{2} << 20;  ///< bytes

struct FreePixels {
    void operator()(QRgb* pixels) const { std::free(pixels); }
};
using LargePixels = std::unique_ptr<QRgb[], FreePixels>;

/// At least so many pixels, in large pages where the system has them. What they hold is undefined. Throws std::bad_alloc.
LargePixels largePixels(std::size_t pixels);

}  // namespace tiepoint::ui
