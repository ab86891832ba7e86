#pragma once
// Traces on paper: what was read of a bench over time, a panel for each unit, over one axis of time. Every figure is
// drawn as it was read; lines are told apart by colour and dash, and each has its name at its end. Needs a QGuiApplication, but no display.

#include "ui/export/drawing_file.h"

#include <QString>

#include <string>
#include <vector>

namespace tiepoint::ui {

struct TracedLine {
    QString name;
    QString unit;                 ///< "V", "A": lines of one unit share a panel
    std::vector<double> figures;  ///< SI, by instant; NaN where there is nothing to read
};

/// The drawing of lines over instants that rise, seconds.
DrawnFile traceSheet(const std::string& title, std::vector<double> seconds, std::vector<TracedLine> lines);

/// An axis: marks at round figures that lie in a range, and the unit that they are written in.
struct AxisMarks {
    double first = 0, step = 1;  ///< SI
    int count = 0;
    double unitSize = 1;  ///< of the printed unit, SI
    QString unit;         ///< "ms"
    int decimals = 0;

    double at(int mark) const { return first + mark * step; }
    QString text(int mark) const;
};
/// About so many marks between two figures, at steps of 1, 2 or 5.
AxisMarks axisMarks(double least, double greatest, const QString& unit, int about);

}  // namespace tiepoint::ui
