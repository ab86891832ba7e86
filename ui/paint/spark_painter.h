#pragma once
// The small trace beside a pinned reading of something that varies: the last four seconds as they are seen, from its least to its greatest.

#include "core/snapshot/snapshot.h"
#include "ui/theme/theme.h"

#include <QPainter>
#include <QRectF>

#include <cstdint>
#include <string>
#include <vector>

namespace tiepoint::ui {

/// In 255 parts of the height; `known` false where nothing was read.
struct SparkColumn {
    std::uint8_t low = 0, high = 0;
    bool known = false;
    friend bool operator==(const SparkColumn&, const SparkColumn&) = default;
};

/// Empty where the reading stands still, or nobody followed it.
std::vector<SparkColumn> sparkOf(const Snapshot& snapshot, const std::string& pinned);

/// Where it is drawn for a tag: along the tag's edge that is away from what the tag points at.
QRectF sparkFrame(const QRectF& tag, double towardY, double em);
void paintSpark(QPainter& painter, const Theme& theme, const QRectF& frame, const std::vector<SparkColumn>& columns);

}  // namespace tiepoint::ui
