#pragma once
// Where the window stood and how large it was, remembered between runs.

#include <QWidget>

namespace tiepoint::ui {

/// Puts the window where it was; a first time, four fifths of the screen.
void restorePlace(QWidget& window);
void rememberPlace(const QWidget& window);

}  // namespace tiepoint::ui
