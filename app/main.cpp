// The program: picks the command and runs it. Without a command it opens the window.

#include "app/commands.h"
#include "app/logging.h"
#include "app/output.h"

#include <algorithm>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace {

using namespace tiepoint::app;

/// Parsed once; owns the parsers that the actions refer to.
struct CommandLine {
    CLI::App program{"Tiepoint: a solderless-breadboard bench that shows what the metal hides.", "tiepoint"};
    bool verbose = false;
    Action window;
    std::map<const CLI::App*, Action> actions;

    CommandLine() {
        program.set_version_flag("--version", "tiepoint " TIEPOINT_VERSION);
        addVerbose(program);
        program.require_subcommand(0, 1);
        window = declareWindow(program);
        for (const Command& command : commands()) {
            CLI::App* parser = program.add_subcommand(std::string(command.name), std::string(command.summary));
            addVerbose(*parser);
            actions[parser] = command.declare(*parser);
        }
    }

    /// Before the command or behind it.
    void addVerbose(CLI::App& parser) {
        parser.add_flag("--verbose", verbose, "Say on standard error what the program does");
    }

    const Action& chosen() const {
        const auto named = program.get_subcommands();
        return named.empty() ? window : actions.at(named.front());
    }
};

/// Why a command line that doesn't hold together can't be used. A wrong command makes everything behind it wrong too: it is named.
std::string whyWrong(const CLI::ParseError& wrong, std::span<char* const> arguments) {
    const auto word = std::ranges::find_if(arguments, [](std::string_view each) { return !each.starts_with('-'); });
    const auto refusal = word == arguments.end() ? std::nullopt : refusalOfWord(*word);
    return refusal.value_or(std::string("tiepoint: ") + wrong.what());
}

}  // namespace

int main(int argc, char** argv) {
    CommandLine line;
    try {
        line.program.parse(argc, argv);
    } catch (const CLI::Success& asked) {  // --help, --version
        return line.program.exit(asked);
    } catch (const CLI::ParseError& wrong) {
        return complain(whyWrong(wrong, std::span(argv, static_cast<std::size_t>(argc)).subspan(1)));
    }
    startLogging(line.verbose);
    const int code = line.chosen()();
    return finishOutput(code);
}
