#pragma once
// Runs the built program as a person or a script would: as a process of its own, with a home folder of its own and without a display.

#include <filesystem>
#include <string>
#include <vector>

namespace tiepoint::test {

struct Ran {
    int code = -1;       ///< exit code; -1 if the process was ended by a signal
    std::string output;  ///< standard output
    std::string error;   ///< standard error
};

/// Runs the program with arguments. `environment` ("NAME=value") is added to a bare one.
Ran runProgram(const std::vector<std::string>& arguments, const std::vector<std::string>& environment = {});
/// The same with a tool of the system: its name, or a path.
Ran runTool(const std::string& tool, const std::vector<std::string>& arguments,
            const std::vector<std::string>& environment = {});

/// A folder for files of this test process, made at the first call and removed at its end.
const std::filesystem::path& scratchFolder();
/// Writes a file in the scratch folder and returns its path.
std::string scratchFile(const std::string& name, const std::string& text);

std::string readFile(const std::filesystem::path& path);
/// The path of a bench of the harbour: harbourBench("beacon-lamp").
std::string harbourBench(const std::string& name);
/// A bench without a solution: two supplies of different voltage with nothing but metal between them, neither with a
/// resistance of its own.
std::string clashingBench();
/// How many lines the text has; a last line without a line break counts.
int lineCount(const std::string& text);

}  // namespace tiepoint::test
