#pragma once
// What the formats promise in common, as checks that throw BrokenPromise.

#include "core/base/result.h"
#include "fuzz/formats.h"

namespace tiepoint::fuzz {

void promise(bool holds, const std::string& what);
/// No control characters: it can stand in a line of a terminal.
bool isOneLine(std::string_view text);
/// Says what is wrong, in one line that can be read.
void promiseGoodMessage(const Error& error);
/// And says where: line, column, pointer.
void promiseItsPlace(const Error& error);
/// The files that ship in a folder of resources, as texts.
std::vector<std::string> embedded(std::string_view folder);

}  // namespace tiepoint::fuzz
