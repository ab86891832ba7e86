// Traces as drawings: marks of axes, and that every figure lies where the axes say.

#include "ui/export/trace_sheet.h"

#include <QImage>

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace tiepoint::ui {
namespace {

TEST(TraceSheet, MarksAreRoundAndLieInTheirRange) {
    for (const auto& [least, greatest] :
         {std::pair(0.0, 3.0), std::pair(-0.0123, 0.0456), std::pair(0.0, 2.3e-7), std::pair(-15.0, 15.0)}) {
        const AxisMarks marks = axisMarks(least, greatest, QStringLiteral("V"), 5);
        ASSERT_GE(marks.count, 3) << least << ' ' << greatest;
        ASSERT_LE(marks.count, 11);
        const double slack = 1e-9 * (greatest - least);
        EXPECT_GE(marks.at(0), least - slack);
        EXPECT_LE(marks.at(marks.count - 1), greatest + slack);
        EXPECT_GT(marks.at(marks.count - 1) + marks.step, greatest - slack);
        for (int mark = 0; mark < marks.count; ++mark) {  // what is printed is the figure
            QString text = marks.text(mark);
            const double printed = text.replace(QChar(0x2212), QLatin1Char('-')).toDouble() * marks.unitSize;
            EXPECT_NEAR(printed, marks.at(mark), 1e-6 * marks.step);
        }
    }
    EXPECT_EQ(axisMarks(0, 0.02, QStringLiteral("A"), 5).unit, QStringLiteral("mA"));
    EXPECT_EQ(axisMarks(1, 1, QStringLiteral("A"), 5).count, 0);
}

/// The row of the first pixel of a colour in a column; -1 without one.
int rowOf(const QImage& image, int column, QRgb colour) {
    for (int row = 0; row < image.height(); ++row)
        if (image.pixel(column, row) == colour) return row;
    return -1;
}

TEST(TraceSheet, EveryFigureIsDrawnAtItsPlace) {
    std::vector<double> seconds, rising, gap;
    for (int i = 0; i <= 100; ++i) {
        seconds.push_back(i * 0.01);
        rising.push_back(i * 0.05);
        gap.push_back(i > 40 && i < 60 ? std::numeric_limits<double>::quiet_NaN() : 0.02);
    }
    const DrawnFile sheet = traceSheet("Lock gate", seconds, {{"A.b13", "V", rising}, {"R1", "A", gap}});
    constexpr int kDotsPerMm = 10;
    QImage image(static_cast<int>(sheet.sizeMm.width() * kDotsPerMm),
                 static_cast<int>(sheet.sizeMm.height() * kDotsPerMm), QImage::Format_RGB32);
    image.fill(sheet.ground);
    QPainter painter(&image);
    painter.scale(kDotsPerMm, kDotsPerMm);
    sheet.paint(painter);
    painter.end();
    const QRgb blue = qRgb(0x00, 0x72, 0xb2), orange = qRgb(0xd5, 0x5e, 0x00);
    // A straight line: the same fall from column to column.
    const int early = rowOf(image, 500, blue), middle = rowOf(image, 800, blue), late = rowOf(image, 1100, blue);
    ASSERT_GT(early, 0);
    EXPECT_GT(early, middle);
    EXPECT_NEAR(early - middle, middle - late, 3);
    // Amperes have a panel of their own below, and nothing is drawn where nothing was read.
    int most = 0, hidden = 0;
    for (int column = 300; column < 1500; ++column) {
        const int row = rowOf(image, column, orange);
        most = std::max(most, row);
        hidden += row < 0 ? 1 : 0;
    }
    EXPECT_GT(most, late + 300);
    EXPECT_GT(hidden, 200);
}

}  // namespace
}  // namespace tiepoint::ui
