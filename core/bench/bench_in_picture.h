#pragma once
// A bench inside a picture: its text stands in a chunk of a PNG file (ISO/IEC 15948, iTXt), which every viewer passes over, so that a picture that
// was shared opens as the bench that it shows. Pure functions of bytes.

#include "core/base/result.h"

#include <string>
#include <string_view>

namespace tiepoint {

/// Whether the bytes begin as every PNG file does.
bool isPng(std::string_view bytes);

/// The picture with the text inside. Requires a PNG file as encoders write it.
std::string withBenchInside(std::string_view png, std::string_view benchText);

/// The text of the bench inside; an error where there is none, or the chunks don't hold together (lengths, checksums).
Result<std::string> benchInside(std::string_view png);

/// The bytes of a file as the text that they are or, of a picture, have inside.
Result<std::string> textOrInside(std::string bytes);

}  // namespace tiepoint
