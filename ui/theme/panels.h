#pragma once
// The furniture's surfaces: cards, buttons that stay down, troughs. Drawn in the pixels of a widget; no state.

#include "ui/theme/look.h"

#include <QPainter>

namespace tiepoint::ui {

/// How a button looks at the moment.
struct ButtonState {
    bool on = false;  ///< latched
    bool hovered = false;
    bool pressed = false;
    bool focused = false;  ///< has the keyboard
};

/// A card with its edge and, where the theme has shadows, a soft one below. The shadow stays within kCardMargin of the frame.
void paintCard(QPainter& painter, const Look& look, const QRectF& frame);
/// A button that can be latched, as in the legend.
void paintButton(QPainter& painter, const Look& look, const QRectF& frame, const ButtonState& state);
/// A shallow tub, as the tray's compartments.
void paintTub(QPainter& painter, const Look& look, const QRectF& frame, const ButtonState& state);
/// The round mark of a latched button: a disc with a tick, or an empty ring.
void paintTick(QPainter& painter, const Look& look, QPointF centre, bool on);

/// A board from above, its outline and three lines: a step of a lesson.
void paintSmallBoard(QPainter& painter, const QRectF& frame, const QColor& fill, const QColor& line, double breadth);

/// Style sheet for slim scroll bars.
QString scrollBarStyle(const Look& look);
/// Style sheet for buttons that are words in the accent colour.
QString wordButtonStyle(const Look& look);

/// Room around a card for its shadow, in layout pixels.
inline constexpr double kCardMargin = 6;

QColor mix(const QColor& a, const QColor& b, double shareOfB);
QColor withAlpha(QColor colour, double alpha);

}  // namespace tiepoint::ui
