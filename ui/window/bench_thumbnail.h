#pragma once
// A small picture of a whole bench, drawn by the same painters as the large one, with every cap held so that what it does is seen.

#include "core/bench/bench.h"
#include "ui/theme/theme.h"

#include <QPixmap>

#include <memory>

namespace tiepoint::ui {

/// Pixels are device-independent; `ratio` is the device's. Window's thread only.
QPixmap benchThumbnail(const std::shared_ptr<const Bench>& bench, const Theme& theme, QSize size, double ratio);

}  // namespace tiepoint::ui
