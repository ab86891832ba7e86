#pragma once
// The program's log: a rotating file in the user's state folder, and standard error with --verbose.

#include <filesystem>
#include <optional>

namespace tiepoint::app {

/// Where the log stands: tiepoint/tiepoint.log in $XDG_STATE_HOME, else in ~/.local/state. Nothing without a home.
std::optional<std::filesystem::path> logPath();

/// Makes the default logger. A log that can't be written is left out: logging never fails the program.
void startLogging(bool verbose);

}  // namespace tiepoint::app
