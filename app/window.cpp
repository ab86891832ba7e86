// tiepoint [FILE]: the window.

#include "app/commands.h"
#include "app/output.h"
#include "app/qt_log.h"
#include "core/base/file_io.h"
#include "ui/window/run_window.h"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace tiepoint::app {
namespace {

constexpr std::string_view kBenchEnding = ".json";

std::string commandNames() {
    std::vector<std::string_view> names;
    for (const Command& command : commands()) names.push_back(command.name);
    return fmt::format("{}", fmt::join(names, ", "));
}

}  // namespace

std::optional<std::string> refusalOfWord(std::string_view word) {
    if (std::ranges::find(commands(), word, &Command::name) != commands().end()) return std::nullopt;
    const auto there = checkFile(word);
    if (there) return std::nullopt;
    const bool namesFile = word.ends_with(kBenchEnding) || word.find('/') != std::string_view::npos;
    if (namesFile || std::filesystem::exists(std::filesystem::path(word))) return there.error().oneLine();
    return fmt::format("tiepoint: there is no command \"{}\", and no file of that name; the commands are {}", word,
                       commandNames());
}

Action declareWindow(CLI::App& parser) {
    auto file = std::make_shared<std::string>();
    parser.add_option("FILE", *file, "A bench to open in the window");
    return [file] {
        if (!file->empty()) {
            if (const auto why = refusalOfWord(*file)) return complain(*why);
        }
        sendQtMessagesToLog();
        return ui::runWindow(file->empty() ? std::nullopt : std::optional(*file));
    };
}

}  // namespace tiepoint::app
