#pragma once
// What each command's file offers: its options declared, and the action to run.

#include "app/command.h"

#include <optional>
#include <string>

namespace tiepoint::app {

Action declareSolve(CLI::App& parser);
Action declareNets(CLI::App& parser);
Action declareRender(CLI::App& parser);
Action declareDiagram(CLI::App& parser);
Action declareArrange(CLI::App& parser);
Action declareParts(CLI::App& parser);
Action declareCheck(CLI::App& parser);
Action declareCompare(CLI::App& parser);
Action declareSheet(CLI::App& parser);
Action declareSlips(CLI::App& parser);
Action declareTruth(CLI::App& parser);
Action declareWhy(CLI::App& parser);
Action declareDiagnose(CLI::App& parser);
Action declareResistor(CLI::App& parser);
Action declareTrace(CLI::App& parser);
Action declareSpread(CLI::App& parser);
Action declareHunt(CLI::App& parser);
Action declareLesson(CLI::App& parser);
/// Why the first word behind the program's name is neither a command nor a bench to open in the window; nothing if it is one of them.
std::optional<std::string> refusalOfWord(std::string_view word);
/// The window: the action of the program itself, without a command.
Action declareWindow(CLI::App& parser);

}  // namespace tiepoint::app
