#include "ui/export/flat_gradient.h"

#include "ui/paint/shade.h"

#include <QLinearGradient>
#include <QRadialGradient>

#include <algorithm>
#include <cmath>
#include <limits>

namespace tiepoint::ui {
namespace {

constexpr int kSteps = 12;  // more would each be too faint for eight bits
constexpr double kBefore = -std::numeric_limits<double>::infinity(), kBehind = std::numeric_limits<double>::infinity();

/// Between two colours as gradients go: shares of light are mixed, so that a fainter colour counts for less.
QColor mixedLight(const QColor& first, const QColor& last, double share) {
    const double a = first.alphaF() * (1 - share), b = last.alphaF() * share;
    if (a + b <= 0) return last;
    const double ofLast = b / (a + b);
    QColor mixed = blend(first, last, ofLast);
    mixed.setAlphaF(static_cast<float>(a + b));
    return mixed;
}

QColor colourAt(const QGradientStops& stops, double at) {
    if (at <= stops.front().first) return stops.front().second;
    for (qsizetype i = 1; i < stops.size(); ++i) {
        const auto& [from, first] = stops[i - 1];
        const auto& [to, last] = stops[i];
        if (at <= to) return mixedLight(first, last, to > from ? (at - from) / (to - from) : 1);
    }
    return stops.back().second;
}

enum class Course { Rising, Falling, Neither };

/// How the opacity goes along a gradient of one colour; Neither too where there are several colours.
Course courseOf(const QGradientStops& stops) {
    bool rises = true, falls = true;
    for (qsizetype i = 1; i < stops.size(); ++i) {
        const QColor &before = stops[i - 1].second, &here = stops[i].second;
        if ((before.rgb() & RGB_MASK) != (here.rgb() & RGB_MASK)) return Course::Neither;
        rises = rises && here.alpha() >= before.alpha();
        falls = falls && here.alpha() <= before.alpha();
    }
    return rises ? Course::Rising : falls ? Course::Falling : Course::Neither;
}

/// Where the gradient is between two shares of its way, as far as it lies in an area.
class Ways {
public:
    Ways(const QGradient& gradient, const QRectF& area) : gradient_(gradient), area_(area) {}

    QPainterPath between(double from, double to) const {
        return gradient_.type() == QGradient::RadialGradient ? ring(from, to) : strip(from, to);
    }

private:
    QPainterPath strip(double from, double to) const {
        const auto& linear = static_cast<const QLinearGradient&>(gradient_);
        const QLineF way(linear.start(), linear.finalStop());
        QPainterPath path;
        if (way.length() <= 0) {
            path.addRect(area_);
            return path;
        }
        // Beyond the area in both directions, whichever way the gradient runs.
        const double reach =
            (std::hypot(area_.width(), area_.height()) + QLineF(area_.center(), way.p1()).length()) / way.length() + 1;
        const QPointF along = way.p2() - way.p1(), across = QPointF(-along.y(), along.x()) * reach;
        const QPointF near = way.p1() + along * std::max(from, -reach), far = way.p1() + along * std::min(to, reach);
        path.addPolygon(QPolygonF({near - across, near + across, far + across, far - across}));
        path.closeSubpath();
        return path;
    }

    QPainterPath ring(double from, double to) const {
        const auto& radial = static_cast<const QRadialGradient&>(gradient_);
        QPainterPath path;
        path.setFillRule(Qt::OddEvenFill);
        if (std::isinf(to))
            path.addRect(area_);
        else
            path.addEllipse(radial.center(), radial.radius() * to, radial.radius() * to);
        if (from > 0) path.addEllipse(radial.center(), radial.radius() * from, radial.radius() * from);
        return path;
    }

    const QGradient& gradient_;
    QRectF area_;
};

std::vector<FlatShape> stack(const Ways& ways, const QGradientStops& stops, bool rising) {
    std::vector<FlatShape> shapes;
    double through = 1;  // what shows through the shapes so far
    for (int i = 0; i < kSteps; ++i) {
        const double far = (i + 0.5) / kSteps;  // from the faint end
        const QColor here = colourAt(stops, rising ? far : 1 - far);
        const double edge = static_cast<double>(i) / kSteps;
        // In whole steps of eight bits, as the paper has it: what one shape lacks the next one adds.
        const int alpha = static_cast<int>(std::lround(255 * (1 - (1 - here.alphaF()) / through)));
        if (alpha <= 0) continue;
        shapes.push_back({rising ? ways.between(i == 0 ? kBefore : edge, kBehind)
                                 : ways.between(kBefore, i == 0 ? kBehind : 1 - edge),
                          QColor(here.red(), here.green(), here.blue(), alpha)});
        through *= 1 - alpha / 255.0;
    }
    return shapes;
}

std::vector<FlatShape> bands(const Ways& ways, const QGradientStops& stops) {
    std::vector<FlatShape> shapes;
    for (int i = 0; i < kSteps; ++i) {
        const double from = static_cast<double>(i) / kSteps, to = static_cast<double>(i + 1) / kSteps;
        shapes.push_back(
            {ways.between(i == 0 ? kBefore : from, i + 1 == kSteps ? kBehind : to), colourAt(stops, (from + to) / 2)});
    }
    return shapes;
}

}  // namespace

bool fadesAlong(const QBrush& brush) {
    const QGradient* gradient = brush.gradient();
    if (!gradient || gradient->coordinateMode() != QGradient::LogicalMode) return false;
    if (gradient->type() != QGradient::LinearGradient && gradient->type() != QGradient::RadialGradient) return false;
    const QGradientStops stops = gradient->stops();
    return std::any_of(stops.begin(), stops.end(),
                       [&](const QGradientStop& stop) { return stop.second.alpha() != stops.front().second.alpha(); });
}

std::vector<FlatShape> flatShapes(const QBrush& brush, const QRectF& area) {
    const QGradientStops stops = brush.gradient()->stops();
    const Ways ways(*brush.gradient(), brush.transform().inverted().mapRect(area));
    const Course course = courseOf(stops);
    std::vector<FlatShape> shapes =
        course == Course::Neither ? bands(ways, stops) : stack(ways, stops, course == Course::Rising);
    for (FlatShape& shape : shapes) shape.area = brush.transform().map(shape.area);
    return shapes;
}

}  // namespace tiepoint::ui
