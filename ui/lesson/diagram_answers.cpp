#include "ui/lesson/diagram_answers.h"

#include "core/compare/other_circuits.h"
#include "ui/sheet/sheet_painter.h"

#include <algorithm>

namespace tiepoint::ui {

const std::vector<std::shared_ptr<const BenchDiagram>>& DiagramAnswers::sheets(const LessonRun& run) {
    const Prediction* ask = run.isRunning() && run.present().ask ? &*run.present().ask : nullptr;
    const auto bench = ask && ask->diagrams > 0 ? run.present().bench : nullptr;
    if (bench == bench_ && (!ask || ask->right == right_)) return sheets_;
    bench_ = bench;
    sheets_.clear();
    if (!bench) return sheets_;
    right_ = ask->right;
    const CircuitChoice choice =
        circuitChoice(bench, ask->diagrams, ask->right, static_cast<std::uint64_t>(run.step()));
    constexpr double kAnswerRatio = 1.6;  // breadth of an answer to its height
    for (const auto& each : choice.benches)
        sheets_.push_back(diagramOf(buildLayout(each), SymbolStyle::Iec, nullptr, kAnswerRatio));
    return sheets_;
}

void DiagramAnswers::paint(QPainter& painter, const QRectF& frame, const LessonRun& run, int answer,
                           const Theme& theme) {
    const auto& all = sheets(run);
    if (answer >= std::ssize(all)) return;
    SheetPicture picture;
    picture.sheet = all[static_cast<std::size_t>(answer)];
    picture.theme = &theme;
    picture.views.arrows = Arrows::Off;
    picture.views.readings = false;
    picture.paper = false;
    const Diagram& diagram = picture.sheet->diagram;
    const double scale = std::min(frame.width() / diagram.width, frame.height() / diagram.height);
    painter.save();
    painter.translate(frame.center() - QPointF(diagram.width, diagram.height) * scale / 2);
    painter.scale(scale, scale);
    paintSheet(painter, picture);
    painter.restore();
}

}  // namespace tiepoint::ui
