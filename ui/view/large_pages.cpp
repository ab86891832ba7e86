#include "ui/view/large_pages.h"

#ifdef __linux__
#include <sys/mman.h>
#endif

#include <new>

namespace tiepoint::ui {

LargePixels largePixels(std::size_t pixels) {
    const std::size_t bytes = (pixels * sizeof(QRgb) + kLargePage - 1) / kLargePage * kLargePage;
    LargePixels memory(static_cast<QRgb*>(std::aligned_alloc(kLargePage, bytes)));
    if (!memory) throw std::bad_alloc();
#ifdef __linux__
    madvise(memory.get(), bytes, MADV_HUGEPAGE);  // a wish: without large pages it is slower the first time
#endif
    return memory;
}

}  // namespace tiepoint::ui
