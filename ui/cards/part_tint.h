#pragma once
// The colour that stands for a part in bars and lists: the mean of its own picture, so that a new kind needs nothing here.

#include "core/bench/bench.h"
#include "ui/theme/theme.h"

namespace tiepoint::ui {

/// Computed once for each theme, kind and choice, then remembered. Window's thread only.
QColor partTint(const Theme& theme, const Part& part);

}  // namespace tiepoint::ui
