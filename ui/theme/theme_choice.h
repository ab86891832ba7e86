#pragma once
// Which theme is in force: one that the person chose, or by day and dark as the system has it. Remembered between runs.

#include "ui/theme/theme.h"

#include <optional>

namespace tiepoint::ui {

/// The person's choice; nothing: as the system.
std::optional<ThemeName> chosenTheme();
void chooseTheme(std::optional<ThemeName> name);
/// Day or dark, by the colours of the system's own palette.
ThemeName systemTheme();
/// What is in force now.
ThemeName currentTheme();

}  // namespace tiepoint::ui
