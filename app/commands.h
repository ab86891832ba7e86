#pragma once
// What each command's file offers: its options declared, and the action to run.

#include "app/command.h"

namespace tiepoint::app {

Action declareSolve(CLI::App& parser);
Action declareNets(CLI::App& parser);
Action declareRender(CLI::App& parser);
Action declareParts(CLI::App& parser);
Action declareCheck(CLI::App& parser);
Action declareTruth(CLI::App& parser);
Action declareWhy(CLI::App& parser);
Action declareResistor(CLI::App& parser);
/// The window: the action of the program itself, without a command.
Action declareWindow(CLI::App& parser);

}  // namespace tiepoint::app
