#pragma once
// Standard output and standard error: results go to the one, reasons to the other, one line each.

#include "core/base/result.h"

#include <string_view>

namespace tiepoint::app {

/// Writes text to standard output.
void print(std::string_view text);

/// Says on standard error, in one printable line, why the input can't be used; returns kExitUnusable.
int complain(std::string_view reason);
int complain(const Error& error);

/// Flushes standard output at the end. Returns `code`, or complains if not all of the output could be written.
int finishOutput(int code);

}  // namespace tiepoint::app
