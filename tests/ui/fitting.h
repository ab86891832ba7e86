#pragma once
// Whether the words of a window can be read: each painted text and each child widget is asked what room it wants and what it has, and
// whether it lies over another. Walks whatever widgets there are, so that a new card is looked at as soon as it is shown.

#include <QString>
#include <QStringList>
#include <QWidget>

namespace tiepoint::ui {

/// May a text be shortened? Only where it comes from outside and can be of any length; then a tool tip and the screen reader tell the whole.
enum class Shortened { Never, IfToldElsewhere };

/// Everything of the window around the board, and the fields over it: what is wrong with it, one line each. Empty: all can be read.
QStringList misfitsOf(QWidget& window, Shortened shortened = Shortened::Never);
/// The same of one widget and what is in it.
QStringList misfitsIn(QWidget& widget, Shortened shortened = Shortened::Never);

}  // namespace tiepoint::ui
