#pragma once
// The dialogues of File: open, save as, and the questions before something is lost. They belong to a window and return at once; the
// answer comes later.

#include "ui/document/file_actions.h"

namespace tiepoint::ui {

FileActions::Asker fileDialogs(QWidget* window);
/// Whether a file that stands there may be replaced: for a path that a file dialogue hasn't asked about.
void askToReplace(QWidget* window, const QString& path, const FileActions::GiveConsent& give);

}  // namespace tiepoint::ui
