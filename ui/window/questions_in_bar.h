#pragma once
// The questions that stand before something is lost, asked in the window's bar. Each returns at once; the answer comes later, and always
// comes: what is put away counts as cancelled.

#include "ui/document/file_actions.h"
#include "ui/window/message_bar.h"
#include "ui/window/reveal_menu.h"

namespace tiepoint::ui {

/// Files are chosen in dialogues of the window, everything else is asked in the bar.
FileActions::Asker questionsInBar(MessageBar& bar, QWidget* window);
/// Whether a file that stands there may be replaced: for a path that a file dialogue hasn't asked about.
void askToReplace(MessageBar& bar, const QString& path, const FileActions::GiveConsent& give);
RevealMenu::Asker phraseInBar(MessageBar& bar);

}  // namespace tiepoint::ui
