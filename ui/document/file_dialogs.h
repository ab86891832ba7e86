#pragma once
// The dialogues in which files are chosen. They belong to a window and return at once; the answer comes later. Everything else that File
// asks, the window asks in its own bar.

#include "ui/document/file_actions.h"

#include <QFileDialog>

namespace tiepoint::ui {

/// Asks for paths; the other questions are cancelled.
FileActions::Asker fileDialogs(QWidget* window);
/// Gives a dialogue print and room that grow with its window. The system's own dialogues keep theirs.
void fitDialog(QFileDialog& dialog, const QWidget& window);

}  // namespace tiepoint::ui
