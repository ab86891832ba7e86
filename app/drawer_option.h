#pragma once
// --drawer: the resistors that mends and the resistor helper may take.

#include "core/parts/drawer.h"

#include <CLI/CLI.hpp>

#include <string>

namespace tiepoint::app {

struct DrawerOption {
    std::string text;

    void declare(CLI::App& parser) {
        parser.add_option("--drawer", text,
                          "The resistors at hand: \"220 330 1k 4k7\"; every value of E12 where nothing is said");
    }
    Result<ResistorDrawer> read() const {
        auto drawer = readDrawer(text);
        if (!drawer) return Error{ErrorKind::Range, "--drawer: " + drawer.error().message};
        return drawer;
    }
};

}  // namespace tiepoint::app
