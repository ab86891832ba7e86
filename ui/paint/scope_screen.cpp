#include "ui/paint/scope_screen.h"

#include "core/base/quantity.h"
#include "ui/paint/lettering.h"
#include "ui/paint/shade.h"
#include "ui/theme/qs.h"

#include <QPainterPath>
#include <QStringList>

#include <algorithm>
#include <cmath>
#include <limits>

namespace tiepoint::ui {
namespace {

// As shares of the breadth of the screen: 52 mm on the instrument.
constexpr double kScopeUnit = 1.0 / 52;
constexpr double kTraceMm = 0.42, kGridMm = 0.12, kZeroMm = 0.22, kTraceEndMm = 0.62;

double zeroSquares(const ScopeSettings& settings) {
    return settings.zeroInMiddle ? ScopeSettings::kSquaresOfHalf / 2.0 : 0;
}

/// Seconds with as many digits as the time a square lets change.
QString timeWords(double second, const ScopeSettings& settings) {
    const int decimals = std::clamp(static_cast<int>(std::ceil(-std::log10(settings.secondsPerSquare))), 0, 6) + 1;
    return QStringLiteral("%1 s").arg(second, 0, 'f', decimals);
}

struct ScreenPlaces {
    QRectF frame;
    double unit, squareWide, squareHigh;

    explicit ScreenPlaces(const QRectF& in)
        : frame(in),
          unit(in.width() * kScopeUnit),
          squareWide(in.width() / ScopeSettings::kSquares),
          squareHigh(in.height() / (2 * ScopeSettings::kSquaresOfHalf)) {}

    QRectF half(int channel) const {
        return {frame.left(), frame.top() + channel * frame.height() / 2, frame.width(), frame.height() / 2};
    }
    double zeroY(int channel, const ScopeSettings& settings) const {
        return half(channel).bottom() - zeroSquares(settings) * squareHigh;
    }
    double columnX(std::size_t column) const {
        return frame.left() + (static_cast<double>(column) + 0.5) * frame.width() / ScopeScreen::kColumns;
    }
};

void paintGrid(QPainter& painter, const Theme& theme, const ScreenPlaces& at, const ScopeSettings& settings) {
    const QColor ink = theme.furnishing.digitsDim;
    painter.setPen(QPen(faded(ink, 0.3), kGridMm * at.unit));
    for (int i = 0; i <= ScopeSettings::kSquares; ++i) {
        const double x = at.frame.left() + i * at.squareWide;
        painter.drawLine(QPointF(x, at.frame.top()), QPointF(x, at.frame.bottom()));
    }
    for (int i = 0; i <= 2 * ScopeSettings::kSquaresOfHalf; ++i) {
        const double y = at.frame.top() + i * at.squareHigh;
        painter.drawLine(QPointF(at.frame.left(), y), QPointF(at.frame.right(), y));
    }
    painter.setPen(QPen(faded(ink, 0.85), kZeroMm * at.unit));
    for (const int channel : {0, 1}) {
        const double y = at.zeroY(channel, settings);
        painter.drawLine(QPointF(at.frame.left(), y), QPointF(at.frame.right(), y));
    }
}

/// The line through the extremes of all columns, each entered at its nearer end.
QPainterPath traceLine(const ScreenPlaces& at, const ScopeScreen& screen, int channel, QPointF& end) {
    const auto& columns = screen.columns[static_cast<std::size_t>(channel)];
    const QRectF half = at.half(channel);
    const double zero = at.zeroY(channel, screen.settings), per = at.squareHigh / ScopeScreen::kPerSquare;
    QPainterPath line;
    bool drawing = false;
    double lastY = 0;
    for (std::size_t c = 0; c < columns.size(); ++c) {
        if (columns[c].low == ScopeScreen::kNothing) {
            drawing = false;
            continue;
        }
        const double x = at.columnX(c);
        const auto heightOf = [&](int parts) { return std::clamp(zero - parts * per, half.top(), half.bottom()); };
        double first = heightOf(columns[c].low), second = heightOf(columns[c].high);
        if (drawing && std::abs(second - lastY) < std::abs(first - lastY)) std::swap(first, second);
        if (!drawing)
            line.moveTo(x, first);
        else
            line.lineTo(x, first);
        if (second != first) line.lineTo(x, second);
        drawing = true;
        lastY = second;
        end = {x, second};
    }
    return line;
}

/// "2 V": without the zeros that a round figure ends in.
QString roundScale(double value, std::string_view unit) {
    QString words = qs(formatQuantity(value, unit));
    const qsizetype space = words.indexOf(QLatin1Char(' '));
    qsizetype end = space;
    if (words.left(space).contains(QLatin1Char('.'))) {
        while (words[end - 1] == QLatin1Char('0')) --end;
        if (words[end - 1] == QLatin1Char('.')) --end;
    }
    return words.remove(end, space - end);
}

QPen tracePen(const QColor& colour, int channel, double breadth) {
    QPen pen(colour, breadth, Qt::SolidLine, Qt::FlatCap, Qt::RoundJoin);
    if (channel == 1) pen.setDashPattern({3.2, 1.9});
    return pen;
}

void paintTrigger(QPainter& painter, const Theme& theme, const ScreenPlaces& at, const ScopeScreen& screen) {
    const int source = screen.settings.source;
    if (!screen.isShown(source)) return;
    const QRectF half = at.half(source);
    const double wanted = at.zeroY(source, screen.settings) - screen.levelSquares * at.squareHigh;
    const double y = std::clamp(wanted, half.top(), half.bottom());
    const double way = screen.settings.rising ? -1 : 1, u = at.unit;
    QPainterPath mark(QPointF(at.frame.left() + 0.2 * u, y));
    mark.lineTo(at.frame.left() + 1.5 * u, y);
    mark.moveTo(at.frame.left() + 0.85 * u, y - way * 0.9 * u);
    mark.lineTo(at.frame.left() + 0.85 * u, y + way * 0.9 * u);
    mark.moveTo(at.frame.left() + 0.3 * u, y + way * 0.3 * u);
    mark.lineTo(at.frame.left() + 0.85 * u, y + way * 0.9 * u);
    mark.lineTo(at.frame.left() + 1.4 * u, y + way * 0.3 * u);
    painter.setPen(QPen(scopeTraceColour(theme, source), 0.3 * u, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.drawPath(mark);
}

}  // namespace

QColor scopeTraceColour(const Theme& theme, int channel) {
    // Light on the dark screen, of the hues of the leads.
    return blend(theme.jumpers[channel == 0 ? 3 : 2], Qt::white, channel == 0 ? 0.45 : 0.55);
}

ScopeScreen darkScreen(const ScopeSettings& settings) {
    ScopeScreen screen;
    screen.settings = settings;
    screen.levelSquares = settings.levelVolt / settings.voltsPerSquare[static_cast<std::size_t>(settings.source)];
    return screen;
}

ScopeScreen screenOf(const ScopeTrace& trace, double nowSecond) {
    ScopeScreen screen = darkScreen(trace.settings);
    screen.sweeping = trace.sweeping;
    screen.said = trace.stands  ? QStringLiteral("one shot")
                  : trace.waits ? QStringLiteral("waits for its trigger")
                                : timeWords(nowSecond, trace.settings);
    if (!trace.hasTrace()) return screen;
    const double perColumn = trace.settings.screenSecond() / ScopeScreen::kColumns;
    for (const std::size_t channel : {0, 1}) {
        if (!trace.settings.plugged[channel]) continue;
        auto& columns = screen.columns[channel];
        columns.assign(ScopeScreen::kColumns, {ScopeScreen::kNothing, ScopeScreen::kNothing});
        const auto& from = trace.channels[channel];
        const double scale = ScopeScreen::kPerSquare / trace.settings.voltsPerSquare[channel];
        const auto partsOf = [scale](float volt) {
            return static_cast<std::int16_t>(std::lround(std::clamp(volt * scale, -30000.0, 30000.0)));
        };
        for (std::size_t i = 0; i < from.least.size(); ++i) {
            if (std::isnan(from.least[i])) continue;
            const double second = trace.firstSecond + (static_cast<double>(i) + 0.5) * trace.columnSecond;
            const double at = std::floor((second - trace.leftSecond) / perColumn);
            if (at < 0 || at >= ScopeScreen::kColumns) continue;
            ScopeScreen::Column& column = columns[static_cast<std::size_t>(at)];
            const std::int16_t low = partsOf(from.least[i]), high = partsOf(from.greatest[i]);
            const bool isFirst = column.low == ScopeScreen::kNothing;
            column = {isFirst ? low : std::min(column.low, low), isFirst ? high : std::max(column.high, high)};
        }
    }
    return screen;
}

void paintScopeSample(QPainter& painter, const QColor& colour, int channel, QPointF from, double length,
                      double breadth) {
    painter.setPen(tracePen(colour, channel, breadth));
    painter.drawLine(from, from + QPointF(length, 0));
}

void paintScopeScreen(QPainter& painter, const Theme& theme, const QRectF& frame, const ScopeScreen& screen,
                      double letterShare) {
    const Furnishing& f = theme.furnishing;
    const double unit = frame.width() * kScopeUnit, letters = letterShare * frame.width();
    painter.save();
    painter.setPen(outlinePen(blend(f.display, Qt::black, 0.5), 0.3 * unit));
    painter.setBrush(shadeDown(theme, frame, f.display, f.displayLow));
    painter.drawPath(roundedBox(frame, 1.1 * unit));
    painter.setClipRect(frame);
    const ScreenPlaces at(frame.adjusted(1.2 * unit, 1.2 * unit, -1.2 * unit, -1.2 * unit));
    paintGrid(painter, theme, at, screen.settings);
    painter.setBrush(Qt::NoBrush);
    for (const int channel : {0, 1}) {
        if (!screen.isShown(channel)) continue;
        const QColor colour = scopeTraceColour(theme, channel);
        QPointF end;
        const QPainterPath line = traceLine(at, screen, channel, end);
        if (line.isEmpty()) continue;
        painter.setPen(tracePen(colour, channel, kTraceMm * unit));
        painter.drawPath(line);
        const Lettering number{letters * 1.05, QFont::DemiBold};
        const bool atRight = end.x() > at.frame.right() - 2.2 * letters;
        if (screen.sweeping) {
            painter.setPen(Qt::NoPen);
            painter.setBrush(colour);
            painter.drawPath(disc(end, kTraceEndMm * unit));
            painter.setBrush(Qt::NoBrush);
        }
        const double away = std::max(1.1 * letters, 1.4 * unit);
        const double below = at.half(channel).top() + 0.8 * letters;
        drawText(painter, QString::number(channel + 1),
                 atRight ? QPointF(end.x() - away, std::max(below, end.y() - away)) : end + QPointF(away, 0), number,
                 colour);
    }
    paintTrigger(painter, theme, at, screen);
    drawText(painter, screen.said, {at.frame.right() - 0.8 * unit, at.frame.top() + 0.9 * letters},
             {letters, QFont::Normal}, f.digits, Qt::AlignRight);
    painter.restore();
}

QString voltsOfSquare(const ScopeSettings& settings, int channel) {
    return roundScale(settings.voltsPerSquare[static_cast<std::size_t>(channel)], "V");
}

QString secondsOfSquare(const ScopeSettings& settings) { return roundScale(settings.secondsPerSquare, "s"); }

QStringList measureList(const ScopeMeasures& measures) {
    QStringList words;
    if (std::isnan(measures.mean)) return words;
    const auto volts = [](double volt) { return qs(formatQuantity(volt, "V")); };
    words << QStringLiteral("mean %1").arg(volts(measures.mean));
    words << QStringLiteral("rms %1").arg(volts(measures.effective));
    words << QStringLiteral("from %1 to %2").arg(volts(measures.least), volts(measures.greatest));
    if (!std::isnan(measures.hertz)) {
        words << qs(formatQuantity(measures.hertz, "Hz"));
        words << QStringLiteral("duty %1 %").arg(std::lround(100 * measures.duty));
    }
    return words;
}

QString measuresInWords(const ScopeMeasures& measures) { return measureList(measures).join(QStringLiteral(", ")); }

}  // namespace tiepoint::ui
