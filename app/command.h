#pragma once
// Commands of the command line. Each is one file that declares its options and returns what runs once they are parsed;
// the table in commands.cpp names it in one line. Everything here runs in the main thread.

#include <CLI/CLI.hpp>

#include <functional>
#include <span>
#include <string_view>

namespace tiepoint::app {

/// Exit codes, the same for every command.
enum Exit : int {
    kExitGood = 0,
    kExitBad = 1,       ///< no solution, or a finding that is a fault or a risk
    kExitUnusable = 2,  ///< the input can't be used; one line on standard error says why
};

/// Runs a command whose options have been parsed; returns an exit code.
using Action = std::function<int()>;

struct Command {
    std::string_view name;
    std::string_view summary;
    /// Adds the command's options to its own parser.
    Action (*declare)(CLI::App& parser);
};

/// Every command with a name, in the order of the help. The window, which has none, is window.h.
std::span<const Command> commands();

}  // namespace tiepoint::app
