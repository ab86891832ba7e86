#pragma once
// A chart to find slips by, on one page of paper: questions from the left to the right, an answer on each line between them, and what is left
// at the right edge. In black, with vectors and real letters.

#include "core/doctor/flow_chart.h"
#include "ui/sheet/pages.h"

namespace tiepoint::ui {

/// Writes a PDF, or nothing. Returns why it failed, or nothing.
std::optional<QString> saveFlowChart(const FlowChart& chart, Paper paper, const QString& path);

}  // namespace tiepoint::ui
