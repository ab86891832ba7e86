#include "ui/view/carried_icon.h"

#include "ui/paint/bench_painter.h"

#include <QGuiApplication>

#include <algorithm>
#include <cmath>
#include <utility>

namespace tiepoint::ui {

void CarriedIcon::show(const std::optional<Part>& part, std::optional<int> jumperColour) {
    std::string wanted = part ? part->id : jumperColour ? std::to_string(*jumperColour) : std::string();
    if (wanted == shown_) return;
    if (!shown_.empty()) QGuiApplication::restoreOverrideCursor();
    shown_ = std::move(wanted);
    if (!shown_.empty()) QGuiApplication::setOverrideCursor(QCursor(pixmapOf(part, jumperColour)));
}

QPixmap CarriedIcon::pixmapOf(const std::optional<Part>& part, std::optional<int> jumperColour) const {
    constexpr double kCursorMm = 14, kLengthMm = 9;
    const double scale = std::min(camera_.pixelsPerMm(), 6.0);  // larger cursors are refused by some systems
    QPixmap pixmap(QSize(1, 1) * static_cast<int>(std::lround(kCursorMm * scale)));
    pixmap.fill(Qt::transparent);
    QPainter painter(&pixmap);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate(pixmap.width() / 2.0, pixmap.height() / 2.0);
    painter.scale(scale, scale);
    if (part) {
        const Package& package = *part->kind->package;
        const double room = kCursorMm / std::max({kCursorMm, package.bodyLengthMm, package.bodyWidthMm});
        painter.scale(room, room);
        paintSample(painter, *picture_.theme, *part);
    } else {
        paintJumperSample(painter, *picture_.theme, *jumperColour, kLengthMm);
    }
    return pixmap;
}

}  // namespace tiepoint::ui
