#pragma once
// Text from outside (a title, a note, a name out of a file, the name of a file) as text and nothing else. Whoever shows such text, on a
// terminal, in a window, in a picture or in a log, passes it through here. Markup is the sink's own concern: this leaves < and & alone.

#include <string>
#include <string_view>

namespace tiepoint {

/// Whether a code point is shown as itself. False for controls (C0, DEL, C1), for line and paragraph separators, for the marks that turn
/// the direction of writing and for what is no character: each could break the line, command a terminal or disguise what stands there.
bool isPrintable(char32_t code);

/// The text in one line, with each code point that isn't printable as its number: ESC is "\u001b". Bytes that are no UTF-8 are
/// "\xff". Never fails; text that is printable comes back as it was.
std::string printable(std::string_view text);

/// The same for text of several lines: line feeds stay.
std::string printableLines(std::string_view text);

}  // namespace tiepoint
