#pragma once
// What may stand on the cap of a push button.

#include <string_view>

namespace tiepoint {

/// Whether the text is one letter or digit, of any script; not a sign or a space, which no one would find on
/// a keyboard.
bool isCap(std::string_view text);

}  // namespace tiepoint
