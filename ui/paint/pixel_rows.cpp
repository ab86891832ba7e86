#include "ui/paint/pixel_rows.h"

#ifdef __SSE2__
#include <immintrin.h>
#endif

#include <cstddef>
#include <cstring>

namespace tiepoint::ui {
namespace {

/// So many 255ths of each channel, two at a time; rounds as division by 255 does.
inline QRgb fadedPixel(QRgb pixel, QRgb share) {
    constexpr QRgb kTwo = 0x00ff00ff, kHalf = 0x00800080;
    QRgb low = (pixel & kTwo) * share, high = ((pixel >> 8) & kTwo) * share;
    low = ((low + ((low >> 8) & kTwo) + kHalf) >> 8) & kTwo;
    high = (high + ((high >> 8) & kTwo) + kHalf) & ~kTwo;
    return low | high;
}

/// Porter and Duff's "over" for premultiplied colours.
inline QRgb over(QRgb above, QRgb below) { return above + fadedPixel(below, 255 - (above >> 24)); }

#ifdef __SSE2__
constexpr int kAtOnce = 4;

/// The same for two pixels, each channel in sixteen bits.
inline __m128i through(__m128i above, __m128i below) {
    const __m128i alpha =
        _mm_shufflehi_epi16(_mm_shufflelo_epi16(above, _MM_SHUFFLE(3, 3, 3, 3)), _MM_SHUFFLE(3, 3, 3, 3));
    const __m128i product = _mm_mullo_epi16(below, _mm_sub_epi16(_mm_set1_epi16(255), alpha));
    return _mm_srli_epi16(_mm_add_epi16(_mm_add_epi16(product, _mm_srli_epi16(product, 8)), _mm_set1_epi16(128)), 8);
}

/// Four pixels; most pieces of a layer are empty or full, and cost a look.
inline void layFour(QRgb* target, const QRgb* from) {
    const __m128i zero = _mm_setzero_si128(), full = _mm_set1_epi32(static_cast<int>(0xff000000U));
    const __m128i above = _mm_loadu_si128(reinterpret_cast<const __m128i*>(from));
    if (_mm_movemask_epi8(_mm_cmpeq_epi32(above, zero)) == 0xffff) return;
    auto* to = reinterpret_cast<__m128i*>(target);
    if (_mm_movemask_epi8(_mm_cmpeq_epi32(_mm_and_si128(above, full), full)) == 0xffff)
        return _mm_storeu_si128(to, above);
    const __m128i below = _mm_loadu_si128(to);
    const __m128i low = through(_mm_unpacklo_epi8(above, zero), _mm_unpacklo_epi8(below, zero));
    const __m128i high = through(_mm_unpackhi_epi8(above, zero), _mm_unpackhi_epi8(below, zero));
    _mm_storeu_si128(to, _mm_add_epi8(above, _mm_packus_epi16(low, high)));
}

#define WITH_AVX2 __attribute__((target("avx2")))
constexpr int kAtOnceWide = 8;

WITH_AVX2 inline __m256i throughWide(__m256i above, __m256i below) {
    const __m256i alpha =
        _mm256_shufflehi_epi16(_mm256_shufflelo_epi16(above, _MM_SHUFFLE(3, 3, 3, 3)), _MM_SHUFFLE(3, 3, 3, 3));
    const __m256i product = _mm256_mullo_epi16(below, _mm256_sub_epi16(_mm256_set1_epi16(255), alpha));
    return _mm256_srli_epi16(
        _mm256_add_epi16(_mm256_add_epi16(product, _mm256_srli_epi16(product, 8)), _mm256_set1_epi16(128)), 8);
}

/// Eight pixels over eight.
WITH_AVX2 inline __m256i overWide(__m256i above, __m256i below) {
    const __m256i zero = _mm256_setzero_si256();
    const __m256i low = throughWide(_mm256_unpacklo_epi8(above, zero), _mm256_unpacklo_epi8(below, zero));
    const __m256i high = throughWide(_mm256_unpackhi_epi8(above, zero), _mm256_unpackhi_epi8(below, zero));
    return _mm256_add_epi8(above, _mm256_packus_epi16(low, high));
}

/// Eight pixels with so much of their opacity.
WITH_AVX2 inline __m256i fadedWide(__m256i pixels, __m256i opacity) {
    const __m256i zero = _mm256_setzero_si256(), half = _mm256_set1_epi16(128);
    const auto less = [&](__m256i channels) WITH_AVX2 {
        const __m256i product = _mm256_mullo_epi16(channels, opacity);
        return _mm256_srli_epi16(_mm256_add_epi16(_mm256_add_epi16(product, _mm256_srli_epi16(product, 8)), half), 8);
    };
    return _mm256_packus_epi16(less(_mm256_unpacklo_epi8(pixels, zero)), less(_mm256_unpackhi_epi8(pixels, zero)));
}

WITH_AVX2 void layFadedWide(PixelRows<QRgb> target, PixelRows<const QRgb> above, QSize size, int opacity) {
    const __m256i share = _mm256_set1_epi16(static_cast<short>(opacity)),
                  places = _mm256_setr_epi32(0, 1, 2, 3, 4, 5, 6, 7);
    for (int y = 0; y < size.height(); ++y) {
        auto* to = reinterpret_cast<int*>(target.first + y * target.stride);
        const auto* from = reinterpret_cast<const int*>(above.first + y * above.stride);
        for (int i = 0; i < size.width(); i += kAtOnceWide) {
            const __m256i within = _mm256_cmpgt_epi32(_mm256_set1_epi32(size.width() - i), places);
            const __m256i pixels = _mm256_maskload_epi32(from + i, within);
            if (_mm256_testz_si256(pixels, pixels)) continue;
            _mm256_maskstore_epi32(to + i, within,
                                   overWide(fadedWide(pixels, share), _mm256_maskload_epi32(to + i, within)));
        }
    }
}

WITH_AVX2 void layBlockWide(PixelRows<QRgb> target, PixelRows<const QRgb> above, QSize size) {
    const __m256i full = _mm256_set1_epi32(static_cast<int>(0xff000000U));
    const int whole = size.width() / kAtOnceWide * kAtOnceWide;
    const __m256i rest =
        _mm256_cmpgt_epi32(_mm256_set1_epi32(size.width() - whole), _mm256_setr_epi32(0, 1, 2, 3, 4, 5, 6, 7));
    for (int y = 0; y < size.height(); ++y) {
        QRgb* to = target.first + y * target.stride;
        const QRgb* from = above.first + y * above.stride;
        for (int i = 0; i < whole; i += kAtOnceWide) {
            const __m256i pixels = _mm256_loadu_si256(reinterpret_cast<const __m256i*>(from + i));
            if (_mm256_testz_si256(pixels, pixels)) continue;
            auto* place = reinterpret_cast<__m256i*>(to + i);
            _mm256_storeu_si256(
                place, _mm256_testc_si256(pixels, full) ? pixels : overWide(pixels, _mm256_loadu_si256(place)));
        }
        if (whole == size.width()) continue;
        const __m256i pixels = _mm256_maskload_epi32(reinterpret_cast<const int*>(from + whole), rest);
        if (_mm256_testz_si256(pixels, pixels)) continue;
        auto* place = reinterpret_cast<int*>(to + whole);
        _mm256_maskstore_epi32(place, rest, overWide(pixels, _mm256_maskload_epi32(place, rest)));
    }
}

const bool kHasAvx2 = __builtin_cpu_supports("avx2");
#endif

void layFaded(PixelRows<QRgb> target, PixelRows<const QRgb> above, QSize size, int opacity) {
    for (int y = 0; y < size.height(); ++y) {
        QRgb* to = target.first + y * target.stride;
        const QRgb* from = above.first + y * above.stride;
        for (int i = 0; i < size.width(); ++i) {
            if (from[i] != 0) to[i] = over(fadedPixel(from[i], static_cast<QRgb>(opacity)), to[i]);
        }
    }
}

}  // namespace

PixelRows<QRgb> rowsOf(QImage& image) {
    return {reinterpret_cast<QRgb*>(image.bits()), image.bytesPerLine() / static_cast<qsizetype>(sizeof(QRgb))};
}

PixelRows<const QRgb> rowsOf(const QImage& image) {
    return {reinterpret_cast<const QRgb*>(image.constBits()),
            image.bytesPerLine() / static_cast<qsizetype>(sizeof(QRgb))};
}

void layOver(QRgb* target, const QRgb* above, int count) { layBlock({target, count}, {above, count}, {count, 1}); }

void layBlock(PixelRows<QRgb> target, PixelRows<const QRgb> above, QSize size, int opacity) {
#ifdef __SSE2__
    if (kHasAvx2)
        return opacity == kOpaque ? layBlockWide(target, above, size) : layFadedWide(target, above, size, opacity);
#endif
    if (opacity < kOpaque) return layFaded(target, above, size, opacity);
    for (int y = 0; y < size.height(); ++y) {
        QRgb* to = target.first + y * target.stride;
        const QRgb* from = above.first + y * above.stride;
        int i = 0;
#ifdef __SSE2__
        for (; i + kAtOnce <= size.width(); i += kAtOnce) layFour(to + i, from + i);
#endif
        for (; i < size.width(); ++i) {
            if (from[i] != 0) to[i] = over(from[i], to[i]);
        }
    }
}

void copyBlock(PixelRows<QRgb> target, PixelRows<const QRgb> from, QSize size) {
    for (int y = 0; y < size.height(); ++y)
        std::memcpy(target.first + y * target.stride, from.first + y * from.stride,
                    static_cast<std::size_t>(size.width()) * sizeof(QRgb));
}

void laySprite(QImage& target, const QRect& clip, QPoint at, const QImage& sprite) {
    const QRect rect = QRect(at, sprite.size()) & clip & target.rect();
    if (rect.isEmpty()) return;
    const PixelRows<QRgb> to = rowsOf(target);
    const PixelRows<const QRgb> from = rowsOf(sprite);
    layBlock({to.at(rect.topLeft()), to.stride}, {from.at(rect.topLeft() - at), from.stride}, rect.size());
}

}  // namespace tiepoint::ui
