#pragma once
// --kit: what a class has, so that sheets and questions speak of what really lies on its tables.

#include "core/course/kit.h"

#include <CLI/CLI.hpp>
#include <spdlog/spdlog.h>

#include <optional>
#include <string>

namespace tiepoint::app {

struct KitOption {
    std::string file;

    void declare(CLI::App& parser) {
        parser.add_option("--kit", file, "What the class has, a *.kit.json file: other values where they serve");
    }
    /// Nothing where no kit was named. What a file has that isn't known is warned about.
    Result<std::optional<Kit>> read() const {
        if (file.empty()) return std::optional<Kit>();
        auto kit = readKitFile(file);
        if (!kit) return kit.error();
        for (const Error& warning : kit->warnings) spdlog::warn(warning.oneLine());
        return std::optional(std::move(kit).value().kit);
    }
};

}  // namespace tiepoint::app
