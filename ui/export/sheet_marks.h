#pragma once
// What stands beside the picture on a printed sheet: a caption, a rule to check the size by and, where a picture takes several sheets, marks
// to join them by. In black on the bare paper, in mm of the paper.

#include "ui/export/paper_plan.h"

#include <QPainter>
#include <QString>

namespace tiepoint::ui {

/// "Sheet 2 of 6: row 1, column 2"; empty on a single sheet.
QString sheetName(const PaperPlan& plan, const PlannedSheet& sheet);

void paintSheetMarks(QPainter& painter, const PaperPlan& plan, const PlannedSheet& sheet, const QString& title);

}  // namespace tiepoint::ui
