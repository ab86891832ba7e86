// Gradients that fade, as shapes of one colour for paper: they look like the gradients.

#include "ui/export/flat_gradient.h"

#include "printed.h"
#include "ui/paint/shade.h"

#include <QPainter>

#include <gtest/gtest.h>

namespace tiepoint::ui {
namespace {

QImage filled(const QBrush& brush, bool flat) {
    QImage image(120, 120, QImage::Format_RGB32);
    image.fill(QColor(200, 180, 150));
    QPainter painter(&image);
    painter.setRenderHint(QPainter::Antialiasing);
    const QRectF area(10, 10, 100, 100);
    painter.setClipRect(area);
    if (!flat) painter.fillRect(area, brush);
    if (flat)
        for (const FlatShape& shape : flatShapes(brush, area)) painter.fillPath(shape.area, shape.colour);
    return image;
}

TEST(FlatGradient, LooksLikeTheGradient) {
    const auto ramp = [](QGradient& gradient, const QColor& first, const QColor& last) {
        gradient.setColorAt(0, first);
        gradient.setColorAt(1, last);
    };
    std::vector<std::pair<const char*, QBrush>> brushes;
    QLinearGradient down(0, 30, 0, 90), slanted(100, 20, 30, 80), both(10, 0, 110, 0);
    ramp(down, faded(Qt::black, 0), faded(Qt::black, 0.3));
    ramp(slanted, faded(Qt::red, 0.9), faded(Qt::red, 0.1));
    ramp(both, faded(Qt::red, 0.2), faded(Qt::blue, 0.7));
    QRadialGradient halo(QPointF(60, 60), 45), turnedRound(QPointF(0, 0), 1);
    for (int i = 0; i <= 8; ++i) halo.setColorAt(i / 8.0, faded(Qt::yellow, 0.8 * (1 - i / 8.0) * (1 - i / 8.0)));
    ramp(turnedRound, faded(Qt::blue, 0), faded(Qt::blue, 0.5));
    QBrush moved(turnedRound);
    moved.setTransform(QTransform(40, 0, 0, 40, 60, 50));
    brushes = {{"down", down}, {"slanted", slanted}, {"two colours", both}, {"halo", halo}, {"moved", moved}};
    for (const auto& [name, brush] : brushes) {
        ASSERT_TRUE(fadesAlong(brush)) << name;
        const Apart from = apart(filled(brush, true), filled(brush, false));
        EXPECT_LT(from.mean, 3) << name;
        EXPECT_EQ(from.share, 0) << name;
    }
    QLinearGradient opaque(0, 0, 0, 9);
    ramp(opaque, Qt::red, Qt::blue);
    EXPECT_FALSE(fadesAlong(QBrush(opaque)));
    EXPECT_FALSE(fadesAlong(QBrush(faded(Qt::red, 0.4))));
}

}  // namespace
}  // namespace tiepoint::ui
