#pragma once
// The first letter of a sentence that is put together from pieces. ASCII only: our own words begin with nothing else. Pure functions.

#include <string>

namespace tiepoint {

std::string capitalised(std::string text);
std::string uncapitalised(std::string text);

}  // namespace tiepoint
