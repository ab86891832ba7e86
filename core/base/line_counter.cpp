#include "core/base/line_counter.h"

#include <algorithm>

namespace tiepoint {

void LineCounter::locate(std::size_t offset, Place& place) {
    offset = std::min(offset, text_.size());
    if (offset < offset_) *this = LineCounter(text_);
    for (; offset_ < offset; ++offset_) {
        if (text_[offset_] == '\n') {
            ++line_;
            column_ = 1;
        } else if ((static_cast<unsigned char>(text_[offset_]) & 0xC0) != 0x80) {
            ++column_;  // a character counts once, however many bytes it has
        }
    }
    place.line = line_;
    place.column = column_;
}

}  // namespace tiepoint
