#pragma once
// What puts something right: an edit, and what it does in words.

#include "core/edit/edit.h"

#include <string>

namespace tiepoint {

struct Mend {
    std::string text;
    Edit edit;
};

}  // namespace tiepoint
