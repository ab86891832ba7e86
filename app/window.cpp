// tiepoint [FILE]: the window.

#include "app/commands.h"
#include "app/qt_log.h"
#include "ui/window/run_window.h"

#include <memory>
#include <optional>
#include <string>

namespace tiepoint::app {

Action declareWindow(CLI::App& parser) {
    auto file = std::make_shared<std::string>();
    parser.add_option("FILE", *file, "A bench to open in the window");
    return [file] {
        sendQtMessagesToLog();
        return ui::runWindow(file->empty() ? std::nullopt : std::optional(*file));
    };
}

}  // namespace tiepoint::app
