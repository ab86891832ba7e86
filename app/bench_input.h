#pragma once
// What most commands start from: a bench read from a file, and the hands on its buttons.

#include "core/base/result.h"
#include "core/bench/bench.h"
#include "core/instant/inputs.h"

#include <CLI/CLI.hpp>

#include <memory>
#include <string>
#include <vector>

namespace tiepoint::app {

struct BenchInput {
    std::string file;
    std::vector<std::string> held;  ///< ids of the parts to press

    /// Adds FILE to a command.
    void declareFile(CLI::App& parser);
    /// Adds --hold.
    void declareHold(CLI::App& parser);

    /// Reads the file. What it doesn't know is warned about on standard error.
    Result<std::shared_ptr<const Bench>> read() const;
    /// The inputs with every held part pressed; an error if the bench has no such part or it can't be pressed.
    Result<Inputs> inputsFor(const Bench& bench) const;
};

}  // namespace tiepoint::app
