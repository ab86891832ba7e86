#include "app/output.h"

#include "app/command.h"
#include "core/base/printable.h"

#include <spdlog/spdlog.h>

#include <algorithm>
#include <cstdio>
#include <string>

namespace tiepoint::app {

void print(std::string_view text) { std::fwrite(text.data(), 1, text.size(), stdout); }

int complain(std::string_view reason) {
    std::string line(reason);
    std::ranges::replace(line, '\n', ' ');  // as the parser of the command line sets its sentences
    line = printable(line);
    if (const auto log = spdlog::get("file")) log->error(line);
    line += '\n';
    std::fwrite(line.data(), 1, line.size(), stderr);
    return kExitUnusable;
}

int complain(const Error& error) { return complain(error.oneLine()); }

int finishOutput(int code) {
    const bool written = std::fflush(stdout) == 0 && std::ferror(stdout) == 0;
    return written ? code : complain("standard output: not everything could be written");
}

}  // namespace tiepoint::app
