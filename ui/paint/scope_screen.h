#pragma once
// The screen of an oscilloscope: what stands on it as a plain value, and its drawing, the same on the instrument's face, large on its card
// and in files. A trace is told by dash, colour and number; each channel has its half of the squares and its own zero line.

#include "core/scope/traces.h"
#include "ui/theme/theme.h"

#include <QPainter>
#include <QRectF>
#include <QString>

#include <array>
#include <cstdint>
#include <vector>

namespace tiepoint::ui {

struct ScopeScreen {
    static constexpr int kColumns = 520;    ///< over the breadth
    static constexpr int kPerSquare = 500;  ///< heights are told in as many parts of a square
    /// Lowest and highest in a column, above the channel's zero line; `kNothing` where nothing was swept.
    struct Column {
        std::int16_t low, high;
        friend bool operator==(const Column&, const Column&) = default;
    };
    static constexpr std::int16_t kNothing = INT16_MIN;

    ScopeSettings settings;
    std::array<std::vector<Column>, 2> columns;
    QString said;  ///< at the upper right: the time, or what it waits for
    double levelSquares = 0;
    bool sweeping = false;

    bool isShown(int channel) const { return settings.plugged[static_cast<std::size_t>(channel)]; }
    friend bool operator==(const ScopeScreen&, const ScopeScreen&) = default;
};

ScopeScreen screenOf(const ScopeTrace& trace, double nowSecond);
/// A screen on which nothing was swept.
ScopeScreen darkScreen(const ScopeSettings& settings);

/// Fills a frame of any unit; letters are so large a share of its breadth.
void paintScopeScreen(QPainter& painter, const Theme& theme, const QRectF& frame, const ScopeScreen& screen,
                      double letterShare);
QColor scopeTraceColour(const Theme& theme, int channel);
/// A sample of a channel's line, from left to right about a place.
void paintScopeSample(QPainter& painter, const QColor& colour, int channel, QPointF from, double length,
                      double breadth);

/// "2 V", "50 ms": of one square.
QString voltsOfSquare(const ScopeSettings& settings, int channel);
QString secondsOfSquare(const ScopeSettings& settings);
/// What is read off a channel, in words: "mean 2.51 V, peak to peak 5.00 V, 12.4 Hz, duty 50 %"; empty where nothing is.
QString measuresInWords(const ScopeMeasures& measures);
QStringList measureList(const ScopeMeasures& measures);

}  // namespace tiepoint::ui
