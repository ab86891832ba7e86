#pragma once
// Work in pieces, done by all processors.

#include <functional>
#include <vector>

namespace tiepoint::ui {

using Work = std::vector<std::function<void()>>;

/// Does the pieces side by side, in their order as threads become free, and waits for all. In threads of Qt's global pool Qt paints without
/// handing pieces of a shape to further threads, which costs more than it saves.
void parallelFor(const Work& pieces);

}  // namespace tiepoint::ui
