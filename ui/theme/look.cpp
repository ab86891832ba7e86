#include "ui/theme/look.h"

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr double kLayoutWidth = 1920;
constexpr double kLayoutHeight = 1080;
constexpr double kSmallestScale = 0.5;  // below this the words can't be read
constexpr double kLargestScale = 3;

}  // namespace

Look lookFor(const Theme& theme, QSize window) {
    const double fit = std::min(window.width() / kLayoutWidth, window.height() / kLayoutHeight);
    return {&theme, std::clamp(fit, kSmallestScale, kLargestScale)};
}

}  // namespace tiepoint::ui
