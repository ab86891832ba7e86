#include "ui/sheet/flow_chart_page.h"

#include "ui/export/save_bytes.h"
#include "ui/theme/plain_text.h"
#include "ui/theme/qs.h"

#include <algorithm>
#include <memory>

namespace tiepoint::ui {
namespace {

constexpr double kChartHeightMm = 205, kBetweenBoxesMm = 9, kChartPadMm = 1.6, kChartRowGapMm = 2;

struct ChartPlace {
    QRectF frame;
    std::vector<QString> lines;
    QString answer;  ///< that leads here
    int from = -1;
};

/// Where every box stands; ends share the height, a question stands in the middle of what it leads to.
class ChartLayout {
public:
    ChartLayout(const FlowChart& chart, double widthMm)
        : chart_(chart),
          widthMm_(widthMm),
          columnMm_((widthMm + kBetweenBoxesMm) / (chart.depth() + 1)),
          places_(chart.boxes.size()) {
        int ends = 0;
        for (const ChartBox& box : chart.boxes) ends += box.branches.empty();
        rowMm_ = kChartHeightMm / std::max(1, ends);
        place(0);
    }
    const std::vector<ChartPlace>& places() const { return places_; }

private:
    double place(int index) {
        const ChartBox& box = chart_.boxes[static_cast<std::size_t>(index)];
        ChartPlace& here = places_[static_cast<std::size_t>(index)];
        double first = 0, last = 0;
        for (std::size_t i = 0; i < box.branches.size(); ++i) {
            ChartPlace& to = places_[static_cast<std::size_t>(box.branches[i].box)];
            to.answer = qs(box.branches[i].answer);
            to.from = index;
            last = place(box.branches[i].box);
            if (i == 0) first = last;
        }
        const bool ends = box.branches.empty();
        const double middle = ends ? (nextRow_++ + 0.5) * rowMm_ : (first + last) / 2;
        const double left = box.depth * columnMm_;
        const double breadth = ends ? widthMm_ - left : columnMm_ - kBetweenBoxesMm;
        here.lines = wrapped(qs(box.text), ends ? paper::kSmall : paper::kStrong, breadth - 2 * kChartPadMm);
        const double line = lineHeightMm(paper::kSmall), answer = here.answer.isEmpty() ? 0 : line;
        if (ends) {
            const auto most =
                std::max(1, static_cast<int>((rowMm_ - kChartRowGapMm - answer - 2 * kChartPadMm) / line));
            if (static_cast<int>(here.lines.size()) > most) {
                here.lines.resize(static_cast<std::size_t>(most));
                here.lines.back() = fittedText(here.lines.back() + QStringLiteral(" and more likewise"), paper::kSmall,
                                               breadth - 2 * kChartPadMm);
            }
        }
        const double high =
            static_cast<double>(here.lines.size()) * lineHeightMm(ends ? paper::kSmall : paper::kStrong) + answer +
            2 * kChartPadMm;
        here.frame = QRectF(left, middle - high / 2, breadth, high);
        return middle;
    }

    const FlowChart& chart_;
    double widthMm_, columnMm_, rowMm_ = 0;
    std::vector<ChartPlace> places_;
    int nextRow_ = 0;
};

void paintChart(QPainter& painter, QPointF at, const FlowChart& chart, const std::vector<ChartPlace>& places) {
    for (std::size_t i = 0; i < places.size(); ++i) {
        const ChartPlace& here = places[i];
        const QRectF frame = here.frame.translated(at);
        const bool ends = chart.boxes[i].branches.empty();
        painter.setBrush(Qt::NoBrush);
        if (here.from >= 0) {
            const QRectF from = places[static_cast<std::size_t>(here.from)].frame.translated(at);
            const double bend = frame.left() - kBetweenBoxesMm / 2;
            painter.setPen(QPen(paper::ink(), paper::kLineMm));
            painter.drawPolyline(
                QPolygonF({QPointF(from.right(), from.center().y()), QPointF(bend, from.center().y()),
                           QPointF(bend, frame.center().y()), QPointF(frame.left(), frame.center().y())}));
        }
        painter.setPen(QPen(paper::ink(), ends ? paper::kHairMm : paper::kHeavyMm));
        painter.drawRect(frame);
        QPointF corner = frame.topLeft() + QPointF(kChartPadMm, kChartPadMm);
        if (!here.answer.isEmpty())
            corner.ry() += paintLines(
                painter, corner,
                {fittedText(here.answer + QLatin1Char(':'), paper::kStrong, frame.width() - 2 * kChartPadMm)},
                paper::kStrong, paper::ink());
        paintLines(painter, corner, here.lines, ends ? paper::kSmall : paper::kStrong, paper::ink());
    }
}

}  // namespace

std::optional<QString> saveFlowChart(const FlowChart& chart, Paper paper, const QString& path) {
    const double width = paper::contentWidthMm(paper);
    const auto shown = std::make_shared<const FlowChart>(chart);
    const auto places = std::make_shared<const std::vector<ChartPlace>>(ChartLayout(*shown, width).places());
    std::vector<Block> blocks;
    blocks.push_back(paragraph(QStringLiteral("Anything hot, or any smell: switch the supply off now and ask no more. "
                                              "First compare the board with the plan, hole by hole. Volts are measured "
                                              "against minus; continuity only with the supply off. Local rules and the "
                                              "person who supervises come first."),
                               paper::kBody, width, 4));
    blocks.push_back(
        {kChartHeightMm, [shown, places](QPainter& painter, QPointF at) { paintChart(painter, at, *shown, *places); }});
    const auto bytes =
        pagesAsPdf(pagesOf(std::move(blocks), paper), {qs(chart.title), QStringLiteral("Find the slip")}, paper);
    if (!bytes) return QStringLiteral("the chart could not be drawn");
    return saveBytes(*bytes, path);
}

}  // namespace tiepoint::ui
