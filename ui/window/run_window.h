#pragma once
// The program with a window: makes the application, opens one window and runs it until it is closed.

#include <optional>
#include <string>

namespace tiepoint::ui {

/// Runs the window, with a file opened in it if one is named. A file that can't be used is said in a bar inside the window.
/// Call once, from the main thread. Returns the program's exit code.
int runWindow(const std::optional<std::string>& file);

}  // namespace tiepoint::ui
