#pragma once
// How the furniture around the bench looks at one moment: the theme, and the scale at which sizes given for a window of
// 1920 x 1080 are drawn. Plain value; handed down from the window to every card.

#include "ui/theme/theme.h"

#include <QFont>
#include <QSize>

namespace tiepoint::ui {

struct Look {
    const Theme* theme = nullptr;
    double scale = 1;

    /// A length of the 1080-line layout in device-independent pixels of this window.
    double px(double at1080) const { return at1080 * scale; }
    int ipx(double at1080) const { return qRound(at1080 * scale); }
    QFont font(double at1080, QFont::Weight weight = QFont::Normal) const { return uiFont(px(at1080), weight); }
    friend bool operator==(const Look&, const Look&) = default;
};

/// Sizes of text in the 1080-line layout.
namespace text {
inline constexpr double kTitle = 30;
inline constexpr double kBody = 24;
inline constexpr double kLabel = 24;
inline constexpr double kSmall = 19;
inline constexpr double kBigReading = 78;
}  // namespace text

/// The look of a window of that size.
Look lookFor(const Theme& theme, QSize window);

}  // namespace tiepoint::ui
