#pragma once
// The dialogues of File: open, save as, and the question about unsaved changes. They belong to a window and return at once; the
// answer comes later.

#include "ui/document/file_actions.h"

namespace tiepoint::ui {

FileActions::Asker fileDialogs(QWidget* window);

}  // namespace tiepoint::ui
