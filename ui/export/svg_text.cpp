#include "ui/export/svg_text.h"

#include "ui/theme/plain_text.h"

#include <QLinearGradient>
#include <QRadialGradient>

#include <cmath>

namespace tiepoint::ui::svg {
namespace {

constexpr int kDecimals = 3;

QByteArray pair(const QPainterPath::Element& point) { return number(point.x) + ' ' + number(point.y); }

QByteArray attribute(const char* name, const QByteArray& value) { return QByteArray(" ") + name + "=\"" + value + '"'; }

QByteArray stops(const QGradientStops& all, double opacity) {
    QByteArray text;
    for (const auto& [at, colour] : all)
        text += "<stop" + attribute("offset", number(at)) + paint("stop", colour, opacity) + "/>";
    return text;
}

}  // namespace

QByteArray number(double value) {
    QByteArray text = QByteArray::number(value, 'f', kDecimals);
    while (text.endsWith('0')) text.chop(1);
    if (text.endsWith('.')) text.chop(1);
    return text == "-0" ? QByteArray("0") : text;
}

QByteArray data(const QPainterPath& path) {
    QByteArray text;
    QPointF start;
    for (int i = 0; i < path.elementCount(); ++i) {
        const QPainterPath::Element element = path.elementAt(i);
        switch (element.type) {
            case QPainterPath::MoveToElement:
                start = element;
                text += 'M' + pair(element);
                break;
            case QPainterPath::LineToElement:
                text += 'L' + pair(element);
                break;
            case QPainterPath::CurveToElement:
                text += 'C' + pair(element) + ' ' + pair(path.elementAt(i + 1)) + ' ' + pair(path.elementAt(i + 2));
                i += 2;
                break;
            case QPainterPath::CurveToDataElement:
                break;
        }
        // Qt closes a part by coming back to where it began; only Z joins the two ends.
        const bool isLast = i + 1 == path.elementCount() || path.elementAt(i + 1).isMoveTo();
        if (isLast && !element.isMoveTo() && QPointF(path.elementAt(i)) == start) text += 'Z';
    }
    return text;
}

QByteArray matrix(const QTransform& t) {
    // More decimals than a length has: a matrix multiplies.
    const auto exact = [](double value) { return QByteArray::number(value, 'g', 9); };
    return "matrix(" + exact(t.m11()) + ' ' + exact(t.m12()) + ' ' + exact(t.m21()) + ' ' + exact(t.m22()) + ' ' +
           exact(t.dx()) + ' ' + exact(t.dy()) + ')';
}

QByteArray paint(const char* name, const QColor& colour, double opacity) {
    const double alpha = colour.alphaF() * opacity;
    const bool isStop = QByteArrayView(name) == "stop";
    QByteArray text = attribute(isStop ? "stop-color" : name, colour.name().toLatin1());
    if (alpha < 1) text += attribute(QByteArray(name).append("-opacity").constData(), number(alpha));
    return text;
}

QByteArray stroke(const QPen& pen, double scale) {
    const double width = pen.widthF() <= 0 ? 1 : pen.widthF() * (pen.isCosmetic() ? 1 : scale);
    QByteArray text = attribute("stroke-width", number(width));
    if (pen.capStyle() == Qt::RoundCap) text += attribute("stroke-linecap", "round");
    if (pen.capStyle() == Qt::SquareCap) text += attribute("stroke-linecap", "square");
    if (pen.joinStyle() == Qt::RoundJoin) text += attribute("stroke-linejoin", "round");
    if (pen.joinStyle() == Qt::BevelJoin) text += attribute("stroke-linejoin", "bevel");
    if (pen.style() == Qt::SolidLine) return text;
    QByteArray dashes;
    for (const double length : pen.dashPattern()) {
        if (!dashes.isEmpty()) dashes += ' ';
        dashes += number(length * width);
    }
    text += attribute("stroke-dasharray", dashes);
    if (pen.dashOffset() != 0) text += attribute("stroke-dashoffset", number(pen.dashOffset() * width));
    return text;
}

QByteArray gradient(const QBrush& brush, const QByteArray& id, double opacity) {
    const QGradient& shade = *brush.gradient();
    QByteArray text = attribute("id", id) + attribute("gradientUnits", "userSpaceOnUse") +
                      attribute("gradientTransform", matrix(brush.transform()));
    // Lengths stand in the painter's units, which may be millimetres of a small picture.
    const auto exact = [](double value) { return QByteArray::number(value, 'g', 7); };
    if (shade.type() == QGradient::RadialGradient) {
        const auto& radial = static_cast<const QRadialGradient&>(shade);
        text += attribute("cx", exact(radial.center().x())) + attribute("cy", exact(radial.center().y())) +
                attribute("r", exact(radial.radius())) + attribute("fx", exact(radial.focalPoint().x())) +
                attribute("fy", exact(radial.focalPoint().y()));
        return "<radialGradient" + text + '>' + stops(shade.stops(), opacity) + "</radialGradient>";
    }
    const auto& linear = static_cast<const QLinearGradient&>(shade);
    text += attribute("x1", exact(linear.start().x())) + attribute("y1", exact(linear.start().y())) +
            attribute("x2", exact(linear.finalStop().x())) + attribute("y2", exact(linear.finalStop().y()));
    return "<linearGradient" + text + '>' + stops(shade.stops(), opacity) + "</linearGradient>";
}

QByteArray words(const std::string& text) { return plainText(text).toHtmlEscaped().toUtf8(); }

}  // namespace tiepoint::ui::svg
