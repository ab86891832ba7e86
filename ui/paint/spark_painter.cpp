#include "ui/paint/spark_painter.h"

#include "ui/paint/shade.h"

#include <QPainterPath>

#include <algorithm>
#include <cmath>
#include <limits>

namespace tiepoint::ui {
namespace {

constexpr double kHighest = 255;
constexpr double kSparkHighEm = 0.95, kSparkGapEm = 0.16, kSparkInset = 0.12;  ///< the last: of its height

}  // namespace

std::vector<SparkColumn> sparkOf(const Snapshot& snapshot, const std::string& pinned) {
    const PinnedTrace* trace = snapshot.traces.pinnedOf(pinned);
    if (!trace || !trace->varies) return {};
    float least = std::numeric_limits<float>::infinity(), greatest = -least;
    for (std::size_t i = 0; i < trace->least.size(); ++i) {
        if (std::isnan(trace->least[i])) continue;
        least = std::min(least, trace->least[i]);
        greatest = std::max(greatest, trace->greatest[i]);
    }
    if (!(greatest > least)) return {};
    std::vector<SparkColumn> columns(trace->least.size());
    const auto part = [&](float value) {
        return static_cast<std::uint8_t>(std::lround(kHighest * (value - least) / (greatest - least)));
    };
    for (std::size_t i = 0; i < columns.size(); ++i)
        if (!std::isnan(trace->least[i])) columns[i] = {part(trace->least[i]), part(trace->greatest[i]), true};
    return columns;
}

QRectF sparkFrame(const QRectF& tag, double towardY, double em) {
    const double high = kSparkHighEm * em, gap = kSparkGapEm * em;
    const bool above = towardY > tag.center().y();
    return {tag.left(), above ? tag.top() - gap - high : tag.bottom() + gap, tag.width(), high};
}

void paintSpark(QPainter& painter, const Theme& theme, const QRectF& frame, const std::vector<SparkColumn>& columns) {
    if (columns.empty()) return;
    const double radius = frame.height() / 5, line = frame.height() / 14;
    painter.setPen(outlinePen(faded(theme.dimText, 0.7), line / 2));
    painter.setBrush(theme.card);
    painter.drawPath(roundedBox(frame, radius));
    const QRectF room = frame.adjusted(radius, kSparkInset * frame.height(), -radius, -kSparkInset * frame.height());
    QPainterPath path;
    bool drawing = false;
    double last = 0;
    for (std::size_t i = 0; i < columns.size(); ++i) {
        if (!columns[i].known) {
            drawing = false;
            continue;
        }
        const double x =
            room.left() + room.width() * (static_cast<double>(i) + 0.5) / static_cast<double>(columns.size());
        double first = room.bottom() - room.height() * columns[i].low / kHighest;
        double second = room.bottom() - room.height() * columns[i].high / kHighest;
        if (drawing && std::abs(second - last) < std::abs(first - last)) std::swap(first, second);
        drawing ? path.lineTo(x, first) : path.moveTo(x, first);
        path.lineTo(x, second);
        drawing = true;
        last = second;
    }
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(theme.accent, line, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.drawPath(path);
}

}  // namespace tiepoint::ui
