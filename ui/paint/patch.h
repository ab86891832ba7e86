#pragma once
// A layer of the picture as a list of patches. On paper each is painted once. A screen keeps the pixels and paints only the patches
// that are new or look otherwise than before, and what they lie over.

#include <QColor>
#include <QPainter>
#include <QRectF>
#include <QString>

#include <bit>
#include <cstdint>
#include <functional>
#include <string_view>
#include <type_traits>
#include <vector>

namespace tiepoint::ui {

/// What a patch looks like, as a number: figures, colours and words folded together.
class PatchLook {
public:
    template <class T>
    requires std::is_arithmetic_v<T> || std::is_enum_v<T> PatchLook& operator<<(T value) {
        if constexpr (std::is_floating_point_v<T>) {
            return fold(std::bit_cast<std::uint64_t>(static_cast<double>(value)));
        } else {
            return fold(static_cast<std::uint64_t>(value));
        }
    }
    PatchLook& operator<<(const char* text) { return *this << std::string_view(text); }
    PatchLook& operator<<(std::string_view text) { return fold(std::hash<std::string_view>{}(text)); }
    PatchLook& operator<<(const QString& text) { return fold(qHash(text)); }
    PatchLook& operator<<(const QColor& colour) { return fold(colour.rgba()); }
    PatchLook& operator<<(QPointF at) { return *this << at.x() << at.y(); }
    std::uint64_t value() const { return value_; }

private:
    PatchLook& fold(std::uint64_t more) {
        value_ = (std::rotl(value_, 29) ^ more) * 0x9e3779b97f4a7c15ULL;
        return *this;
    }
    std::uint64_t value_ = 0x243f6a8885a308d3ULL;
};

struct Patch {
    QRectF mm;                             ///< on the bench; nothing is drawn outside of it
    PatchLook look;                        ///< equal for two patches at the same place only if they draw the same
    std::function<void(QPainter&)> paint;  ///< in mm of the bench; leaves transform, clip and opacity as they were
    QRectF opaque = {};                    ///< wholly covered by it; empty where nothing surely is
    bool movable =
        false;  ///< patches of the same look and size draw the same wherever they lie: one may be moved to stand for another
    double opacity = 1;  ///< of all that `paint` draws, together
};

using Patches = std::vector<Patch>;

/// In its opacity.
void paintPatch(QPainter& painter, const Patch& patch);
void paintPatches(QPainter& painter, const Patches& patches);

}  // namespace tiepoint::ui
