#pragma once
// The circuit diagrams among which a lesson's step asks for the board's: worked out when the step stands on the table, and drawn as answers,
// with nothing lit. Window's thread only.

#include "core/diagram/bench_diagram.h"
#include "ui/lesson/lesson_run.h"
#include "ui/theme/look.h"

#include <QPainter>

#include <memory>
#include <vector>

namespace tiepoint::ui {

class DiagramAnswers {
public:
    /// Draws an answer's diagram as large as the frame lets it.
    void paint(QPainter& painter, const QRectF& frame, const LessonRun& run, int answer, const Theme& theme);
    /// By answer; none where the step asks for no diagram.
    const std::vector<std::shared_ptr<const BenchDiagram>>& sheets(const LessonRun& run);

private:
    std::shared_ptr<const Bench> bench_;  ///< for which they were made
    int right_ = -1;
    std::vector<std::shared_ptr<const BenchDiagram>> sheets_;
};

}  // namespace tiepoint::ui
