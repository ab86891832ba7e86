#include "ui/export/trace_sheet.h"

#include "ui/paint/lettering.h"
#include "ui/theme/plain_text.h"

#include <QPainterPath>

#include <algorithm>
#include <array>
#include <cmath>
#include <memory>

namespace tiepoint::ui {
namespace {

constexpr double kTraceWidthMm = 180, kTracePanelMm = 62, kTraceLeftMm = 20, kTraceRightMm = 24, kTraceTopMm = 15,
                 kTraceBetweenMm = 9, kTraceBelowMm = 15;
constexpr Lettering kTraceTitle{4.4, QFont::DemiBold}, kTraceMark{2.9, QFont::Normal}, kTraceName{3.2, QFont::DemiBold};
constexpr double kTraceLineMm = 0.45, kTraceGridMm = 0.12, kTraceFrameMm = 0.25, kTraceNameStepMm = 4,
                 kTraceMarkGapMm = 1.4;
constexpr int kTraceMarksAcross = 8, kTraceMarksUp = 5;
const QColor kTraceInk(0x20, 0x22, 0x26), kTraceGrid(0xd9, 0xdb, 0xdf);

/// Colours that people with any colour vision tell apart (M. Okabe and K. Ito, "Color Universal Design", 2008), the light ones left out.
const std::array<QColor, 5> kTraceColours{QColor(0x00, 0x72, 0xb2), QColor(0xd5, 0x5e, 0x00), QColor(0x00, 0x9e, 0x73),
                                          QColor(0xcc, 0x79, 0xa7), QColor(0x20, 0x22, 0x26)};

QPen traceSheetPen(std::size_t line) {
    QPen pen(kTraceColours[line % kTraceColours.size()], kTraceLineMm);
    pen.setJoinStyle(Qt::RoundJoin);
    const std::array<QVector<qreal>, 4> dashes{QVector<qreal>{}, {6, 3}, {1.5, 2}, {7, 2.5, 1.5, 2.5}};
    if (const auto& dash = dashes[line % dashes.size()]; !dash.isEmpty()) pen.setDashPattern(dash);
    return pen;
}

struct TracePanel {
    QString unit;
    std::vector<std::size_t> lines;
    double least = 0, greatest = 0;
};

struct TracesDrawn {
    std::vector<double> seconds;
    std::vector<TracedLine> lines;
    std::vector<TracePanel> panels;
};

std::vector<TracePanel> tracePanels(const std::vector<TracedLine>& lines) {
    std::vector<TracePanel> panels;
    for (std::size_t line = 0; line < lines.size(); ++line) {
        auto panel = std::ranges::find(panels, lines[line].unit, &TracePanel::unit);
        if (panel == panels.end()) panel = panels.insert(panels.end(), {lines[line].unit, {}, 0, 0});
        panel->lines.push_back(line);
        for (const double figure : lines[line].figures) {
            if (!std::isfinite(figure)) continue;
            panel->least = std::min(panel->least, figure);
            panel->greatest = std::max(panel->greatest, figure);
        }
    }
    for (TracePanel& panel : panels) {  // room for the line itself
        constexpr double kRoom = 0.05, kNothing = 1e-12;
        const double span = std::max(panel.greatest - panel.least, kNothing);
        if (panel.least < 0) panel.least -= kRoom * span;
        panel.greatest += kRoom * span;
    }
    return panels;
}

class TracePainter {
public:
    TracePainter(QPainter& painter, const TracesDrawn& traces) : painter_(painter), traces_(traces) {}

    void paint(const QString& title) {
        drawText(painter_, title, {kTraceLeftMm, kTraceTopMm / 2}, kTraceTitle, kTraceInk, Qt::AlignLeft);
        const double from = traces_.seconds.front(), to = traces_.seconds.back();
        across_ = axisMarks(from, to, QStringLiteral("s"), kTraceMarksAcross);
        double top = kTraceTopMm;
        for (const TracePanel& panel : traces_.panels) {
            area_ = QRectF(kTraceLeftMm, top, kTraceWidthMm - kTraceLeftMm - kTraceRightMm, kTracePanelMm);
            paintPanel(panel);
            top += kTracePanelMm + kTraceBetweenMm;
        }
        for (int mark = 0; mark < across_.count; ++mark)
            drawText(painter_, across_.text(mark), {x(across_.at(mark)), area_.bottom() + 2 * kTraceMarkGapMm + 1},
                     kTraceMark, kTraceInk, Qt::AlignHCenter);
        drawText(painter_, QStringLiteral("time in %1").arg(across_.unit),
                 {area_.center().x(), area_.bottom() + kTraceBelowMm - 4}, kTraceMark, kTraceInk, Qt::AlignHCenter);
    }

private:
    double x(double second) const {
        const double from = traces_.seconds.front(), span = std::max(traces_.seconds.back() - from, 1e-300);
        return area_.left() + area_.width() * (second - from) / span;
    }
    double y(const TracePanel& panel, double figure) const {
        return area_.bottom() - area_.height() * (figure - panel.least) / (panel.greatest - panel.least);
    }

    void paintPanel(const TracePanel& panel) {
        const AxisMarks up = axisMarks(panel.least, panel.greatest, panel.unit, kTraceMarksUp);
        painter_.setBrush(Qt::NoBrush);
        for (int mark = 0; mark < up.count; ++mark) {
            const double at = y(panel, up.at(mark));
            painter_.setPen(QPen(std::abs(up.at(mark)) < up.step / 2 ? kTraceInk : kTraceGrid, kTraceGridMm));
            painter_.drawLine(QPointF(area_.left(), at), QPointF(area_.right(), at));
            drawText(painter_, up.text(mark), {area_.left() - kTraceMarkGapMm, at}, kTraceMark, kTraceInk,
                     Qt::AlignRight);
        }
        painter_.setPen(QPen(kTraceGrid, kTraceGridMm));
        for (int mark = 0; mark < across_.count; ++mark) {
            const double at = x(across_.at(mark));
            painter_.drawLine(QPointF(at, area_.top()), QPointF(at, area_.bottom()));
        }
        drawText(painter_, up.unit, {area_.left(), area_.top() - 2.4}, kTraceMark, kTraceInk, Qt::AlignRight);
        painter_.setPen(QPen(kTraceInk, kTraceFrameMm));
        painter_.drawRect(area_);
        for (const std::size_t line : panel.lines) paintLine(panel, line);
        paintNames(panel);
    }

    void paintLine(const TracePanel& panel, std::size_t line) {
        const std::vector<double>& figures = traces_.lines[line].figures;
        QPainterPath path;
        bool pen = false;
        for (std::size_t i = 0; i < figures.size(); ++i) {
            if (!std::isfinite(figures[i])) {
                pen = false;
                continue;
            }
            const QPointF at(x(traces_.seconds[i]), y(panel, figures[i]));
            pen ? path.lineTo(at) : path.moveTo(at);
            pen = true;
        }
        painter_.setPen(traceSheetPen(line));
        painter_.drawPath(path);
    }

    /// Each beside the end of its line, as far apart as letters need.
    void paintNames(const TracePanel& panel) {
        struct Name {
            double at;
            std::size_t line;
        };
        std::vector<Name> names;
        for (const std::size_t line : panel.lines) {
            const auto& figures = traces_.lines[line].figures;
            const auto last = std::find_if(figures.rbegin(), figures.rend(), [](double f) { return std::isfinite(f); });
            names.push_back({last == figures.rend() ? area_.bottom() : y(panel, *last), line});
        }
        std::ranges::stable_sort(names, {}, &Name::at);
        for (std::size_t i = 1; i < names.size(); ++i)
            names[i].at = std::max(names[i].at, names[i - 1].at + kTraceNameStepMm);
        double lowest = area_.bottom();
        for (auto name = names.rbegin(); name != names.rend(); ++name) {
            name->at = std::min(name->at, lowest);
            lowest = name->at - kTraceNameStepMm;
        }
        for (const Name& name : names) {
            const double left = area_.right() + kTraceMarkGapMm;
            painter_.setPen(traceSheetPen(name.line));
            painter_.drawLine(QPointF(left, name.at), QPointF(left + 5, name.at));
            drawText(painter_, traces_.lines[name.line].name, {left + 6, name.at}, kTraceName,
                     kTraceColours[name.line % kTraceColours.size()], Qt::AlignLeft);
        }
    }

    QPainter& painter_;
    const TracesDrawn& traces_;
    QRectF area_;
    AxisMarks across_;
};

}  // namespace

QString AxisMarks::text(int mark) const {
    const double value = at(mark) / unitSize;
    QString digits = QString::number(std::abs(value) < step / unitSize / 2 ? 0.0 : value, 'f', decimals);
    return digits.replace(QLatin1Char('-'), QChar(0x2212));
}

AxisMarks axisMarks(double least, double greatest, const QString& unit, int about) {
    AxisMarks marks;
    const double span = greatest - least;
    if (!(span > 0) || !std::isfinite(span)) return marks;
    const double rough = span / about, ten = std::pow(10, std::floor(std::log10(rough)));
    marks.step = rough < 1.5 * ten ? ten : rough < 3.5 * ten ? 2 * ten : rough < 7.5 * ten ? 5 * ten : 10 * ten;
    constexpr double kSlack = 1e-9;
    marks.first = std::ceil(least / marks.step - kSlack) * marks.step;
    marks.count = static_cast<int>(std::floor((greatest - marks.first) / marks.step + kSlack)) + 1;
    struct Prefix {
        double size;
        const char* sign;
    };
    constexpr Prefix kPrefixes[] = {{1, ""}, {1e-3, "m"}, {1e-6, "\u00b5"}, {1e-9, "n"}, {1e-12, "p"}};
    const double largest = std::max(std::abs(least), std::abs(greatest));
    const Prefix* chosen =
        std::ranges::find_if(kPrefixes, [&](const Prefix& p) { return largest >= p.size * (1 - kSlack); });
    if (chosen == std::end(kPrefixes)) chosen = std::prev(std::end(kPrefixes));
    marks.unitSize = chosen->size;
    marks.unit = QString::fromUtf8(chosen->sign) + unit;
    marks.decimals = std::max(0, -static_cast<int>(std::floor(std::log10(marks.step / marks.unitSize) + kSlack)));
    return marks;
}

DrawnFile traceSheet(const std::string& title, std::vector<double> seconds, std::vector<TracedLine> lines) {
    auto traces = std::make_shared<TracesDrawn>();
    traces->panels = tracePanels(lines);
    traces->seconds = std::move(seconds);
    traces->lines = std::move(lines);
    const auto count = static_cast<double>(traces->panels.size());
    const double height = kTraceTopMm + count * kTracePanelMm + (count - 1) * kTraceBetweenMm + kTraceBelowMm;
    return {title, {kTraceWidthMm, height}, Qt::white, [traces, words = plainText(title)](QPainter& painter) {
                painter.setRenderHint(QPainter::Antialiasing);
                if (traces->seconds.size() > 1) TracePainter(painter, *traces).paint(words);
            }};
}

}  // namespace tiepoint::ui
