#include "ui/sheet/sheet_painter.h"

#include "ui/paint/lettering.h"
#include "ui/paint/light_painter.h"
#include "ui/paint/net_marks.h"
#include "ui/paint/shade.h"
#include "ui/sheet/sheet_arrows.h"

#include <QPainterPath>

#include <cmath>

namespace tiepoint::ui {
namespace {

constexpr double kSheetWireMm = 0.37, kFlatWireMm = 0.45, kSymbolMm = 0.4;
constexpr double kDotMm = 0.75, kNodeMm = 0.65, kRimMm = 1.5;
constexpr double kSheetSignMm = 4.2, kTagTextMm = 2.8;
constexpr QColor kFilamentLight(0xff, 0xd0, 0x70);

class SheetPainter {
public:
    SheetPainter(QPainter& painter, const SheetPicture& picture)
        : painter_(painter),
          picture_(picture),
          theme_(*picture.theme),
          diagram_(picture.sheet->diagram) {}

    void paint() {
        if (picture_.paper) painter_.fillRect(QRectF(0, 0, diagram_.width, diagram_.height), theme_.card);
        paintHalos();
        painter_.setOpacity(picture_.settled);
        paintRims();
        paintWires();
        painter_.setOpacity(1);
        for (const PlacedPart& part : diagram_.parts) paintPart(part);
        painter_.setOpacity(picture_.settled);
        if (picture_.live() && picture_.views.arrows != Arrows::Off)
            drawMarks(painter_, theme_, sheetArrows(picture_), picture_.views.arrows == Arrows::Electrons);
        paintDots();  // over the arrows: a joint has to be seen
        if (picture_.live() && picture_.views.readings) paintTags();
        painter_.setOpacity(1);
        paintWords();
        paintPointed();
    }

private:
    const Part& partOf(int part) const { return picture_.sheet->layout->bench->parts[part]; }
    double wireMm() const { return theme_.flat ? kFlatWireMm : kSheetWireMm; }

    void stroke(double widthMm, const QColor& colour) {
        painter_.setPen(QPen(colour, widthMm, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
        painter_.setBrush(Qt::NoBrush);
    }

    QColor lightOf(const Part& part) const {
        for (std::size_t i = 0; i < part.kind->values.size(); ++i) {
            const ValueSpec& spec = part.kind->values[i];
            if (spec.name == "colour" && spec.type == ValueType::Choice)
                return ledColours(spec.choices[static_cast<std::size_t>(part.value(static_cast<int>(i)))].name).light;
        }
        return kFilamentLight;
    }
    double brightnessOf(int part) const {
        const Snapshot* live = picture_.live();
        return live && partOf(part).kind->emitsLight ? live->brightness(part) : 0;
    }

    void paintHalos() {
        for (const PlacedPart& part : diagram_.parts) {
            const double brightness = part.symbol ? brightnessOf(part.part) : 0;
            if (!(brightness > 0)) continue;
            painter_.save();
            painter_.translate(toQt(part.pose.at));
            paintHalo(painter_, theme_, lightOf(partOf(part.part)), brightness, picture_.views.voltage);
            painter_.restore();
        }
    }

    bool isPointed(const PlacedPart& part) const {
        return !picture_.hoverPart.empty() && partOf(part.part).id == picture_.hoverPart;
    }

    void paintRims() {
        for (const SheetWire& wire : diagram_.wires) {
            if (wire.net < 0 || picture_.hoverNet < 0 || picture_.sheet->layoutNet[wire.net] != picture_.hoverNet)
                continue;
            stroke(kRimMm, faded(theme_.hover, 0.45));
            painter_.drawLine(toQt(wire.from), toQt(wire.to));
        }
        for (const PlacedPart& part : diagram_.parts) {
            if (!isPointed(part)) continue;
            const QRectF frame = toQt(part.body).adjusted(-1.2, -1.2, 1.2, 1.2);
            stroke(2.2, faded(theme_.hover, 0.3));
            painter_.drawRoundedRect(frame, 1.2, 1.2);
            stroke(0.45, theme_.hover);
            painter_.drawRoundedRect(frame, 1.2, 1.2);
        }
    }

    void paintWires() {
        const Snapshot* live = picture_.views.voltage ? picture_.live() : nullptr;
        for (std::size_t i = 0; i < diagram_.wires.size(); ++i) {
            const SheetWire& wire = diagram_.wires[i];
            painter_.setOpacity(picture_.newWires.empty() || picture_.newWires[i] ? picture_.settled : 1);
            if (live && wire.net >= 0) {
                const double volt = live->solution.netVoltage[picture_.sheet->layoutNet[wire.net]];
                if (!std::isnan(volt)) {
                    stroke(1.6, theme_.text);
                    painter_.drawLine(toQt(wire.from), toQt(wire.to));
                    stroke(1.1, voltColour(voltScale(*live).share(volt)));
                    painter_.drawLine(toQt(wire.from), toQt(wire.to));
                    continue;
                }
            }
            stroke(wireMm(), theme_.text);
            painter_.drawLine(toQt(wire.from), toQt(wire.to));
        }
    }

    void paintPart(const PlacedPart& part) {
        if (!part.symbol) {
            if (part.body == Rect{}) return;
            stroke(kSymbolMm, theme_.text);
            painter_.setBrush(theme_.card);
            painter_.drawRect(toQt(part.body));
            return;
        }
        const double brightness = brightnessOf(part.part);
        for (const SymbolShape& shape : part.symbol->shapes) {
            if (isDrawn(shape.when, partOf(part.part), picture_.inputs())) paintShape(part, shape, brightness);
        }
    }

    void paintShape(const PlacedPart& part, const SymbolShape& shape, double brightness) {
        QPolygonF points;
        for (const Point& at : shape.points) points.append(toQt(part.pose.place(at)));
        stroke(kSymbolMm, theme_.text);
        QBrush fill(Qt::NoBrush);  // what isn't lit hides nothing that is drawn through it
        if (shape.lit && brightness > 0) fill = blend(theme_.card, lightOf(partOf(part.part)), litShare(brightness));
        switch (shape.kind) {
            case SymbolShape::Kind::Line:
                painter_.drawPolyline(points);
                break;
            case SymbolShape::Kind::Filled:
                painter_.setBrush(theme_.text);
                painter_.drawPolygon(points);
                break;
            case SymbolShape::Kind::Outline:
                painter_.setBrush(fill);
                painter_.drawPolygon(points);
                break;
            case SymbolShape::Kind::Circle:
                painter_.setBrush(fill);
                painter_.drawEllipse(points[0], shape.radius, shape.radius);
                break;
            case SymbolShape::Kind::Dotted:
                painter_.setPen(QPen(theme_.text, kSymbolMm * 0.75, Qt::CustomDashLine, Qt::RoundCap));
                paintDotted(points);
                break;
            case SymbolShape::Kind::Arrow:
                paintArrow(points);
                break;
            case SymbolShape::Kind::Text:
                paintSign(points[0], shape.text);
                break;
        }
    }

    void paintDotted(const QPolygonF& points) {
        QPen pen(theme_.text, kSymbolMm * 0.75, Qt::SolidLine, Qt::FlatCap);
        pen.setDashPattern({2, 2.2});
        painter_.setPen(pen);
        painter_.drawPolyline(points);
    }

    void paintArrow(const QPolygonF& points) {
        painter_.drawPolyline(points);
        const QPointF tip = points.last(), from = points[points.size() - 2];
        const double size = std::hypot(tip.x() - from.x(), tip.y() - from.y());
        const QPointF along = (tip - from) / size, aside(-along.y(), along.x());
        constexpr double kLong = 1.7, kHalf = 0.65;
        painter_.setBrush(theme_.text);
        painter_.drawPolygon(QPolygonF{tip, tip - along * kLong + aside * kHalf, tip - along * kLong - aside * kHalf});
    }

    void paintSign(QPointF at, const std::string& text) {
        const QColor colour = text == "+" ? theme_.plusLine : text == "\u2212" ? theme_.minusLine : theme_.text;
        drawText(painter_, QString::fromStdString(text), at, {kSheetSignMm, QFont::DemiBold}, colour);
    }

    void paintDots() {
        painter_.setPen(Qt::NoPen);
        painter_.setBrush(theme_.text);
        for (const SheetDot& dot : diagram_.dots) painter_.drawEllipse(toQt(dot.at), kDotMm, kDotMm);
        for (const Point& end : diagram_.openEnds) paintNode(end);
    }

    void paintNode(Point at) {
        stroke(kSymbolMm * 0.8, theme_.text);
        painter_.setBrush(theme_.card);
        painter_.drawEllipse(toQt(at), kNodeMm, kNodeMm);
    }

    void paintTags() {
        for (const SheetTag& tag : diagram_.tags) {
            const int net = picture_.sheet->layoutNet[tag.net];
            const Figure volt = picture_.live()->shown().volt(net);
            if (!volt.isKnown()) continue;
            const bool pointed = net == picture_.hoverNet;
            const QColor edge = pointed ? theme_.hover : theme_.dimText;
            stroke(0.25, edge);
            const Point end{std::clamp(tag.node.x, tag.frame.left, tag.frame.right()),
                            std::clamp(tag.node.y, tag.frame.top, tag.frame.bottom())};
            painter_.drawLine(toQt(tag.node), toQt(end));
            paintNode(tag.node);
            stroke(pointed ? 0.4 : 0.25, edge);
            painter_.setBrush(theme_.card);
            painter_.drawRoundedRect(toQt(tag.frame), 0.8, 0.8);
            write(QString::fromStdString(volt.text()), tag.frame, 0, QFont::DemiBold, theme_.text, kTagTextMm);
        }
    }

    /// In the room kept for it: a word that is broader in this font is drawn smaller.
    void write(const QString& text, const Rect& frame, int align, QFont::Weight weight, const QColor& colour,
               double emMm) {
        Lettering lettering{emMm, weight};
        const double width = textWidthMm(text, lettering);
        if (width > frame.width) lettering.sizeMm *= frame.width / width;
        const double x = align < 0 ? frame.left : align > 0 ? frame.right() : frame.left + frame.width / 2;
        drawText(painter_, text, {x, frame.top + frame.height / 2}, lettering, colour,
                 align < 0   ? Qt::AlignLeft
                 : align > 0 ? Qt::AlignRight
                             : Qt::AlignHCenter);
    }

    void paintWords() {
        for (const SheetWord& word : diagram_.words) {
            const std::string text = word.kind == WordKind::Switch
                                         ? switchWord(*picture_.sheet->layout->bench, word.part, picture_.inputs())
                                         : word.text;
            const bool strong = word.kind == WordKind::Id;
            write(QString::fromStdString(text), word.frame, word.align, strong ? QFont::DemiBold : QFont::Normal,
                  word.kind == WordKind::Value ? theme_.dimText : theme_.text,
                  word.kind == WordKind::Lead ? kSheetTextMm * 0.85 : kSheetTextMm);
        }
    }

    /// What the part that is pointed at takes, in a tag of the hover colour where there is room below it.
    void paintPointed() {
        for (const PlacedPart& part : diagram_.parts) {
            if (!isPointed(part) || !picture_.live()) continue;
            const QString words = sheetPartWords(picture_, part.part);
            if (words.isEmpty()) continue;
            const Lettering lettering{kTagTextMm, QFont::DemiBold};
            const double width = textWidthMm(words, lettering) + 3, height = 5.2;
            double x = part.body.left + part.body.width / 2 - width / 2, y = part.body.bottom() + 2.2;
            x = std::clamp(x, 0.5, std::max(0.5, diagram_.width - width - 0.5));
            y = std::min(y, diagram_.height - height - 0.5);
            painter_.setPen(Qt::NoPen);
            painter_.setBrush(theme_.hover);
            painter_.drawRoundedRect(QRectF(x, y, width, height), 0.8, 0.8);
            drawText(painter_, words, {x + width / 2, y + height / 2}, lettering, theme_.card);
        }
    }

    QPainter& painter_;
    const SheetPicture& picture_;
    const Theme& theme_;
    const Diagram& diagram_;
};

}  // namespace

void paintSheet(QPainter& painter, const SheetPicture& picture) {
    painter.save();
    painter.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
    SheetPainter(painter, picture).paint();
    painter.restore();
}

UnderSheet underSheet(const BenchDiagram& sheet, Point at) {
    constexpr double kNear = 1.5;
    UnderSheet under;
    for (const PlacedPart& part : sheet.diagram.parts) {
        if (part.leads.empty() && part.body == Rect{}) continue;
        const Rect& body = part.body;
        const Rect room{body.left - kNear, body.top - kNear, body.width + 2 * kNear, body.height + 2 * kNear};
        if (room.contains(at)) under.part = part.part;
    }
    for (const SheetWord& word : sheet.diagram.words) {
        if (word.kind != WordKind::Lead && word.frame.contains(at)) under.part = word.part;
    }
    if (under.part >= 0) return under;
    for (const SheetTag& tag : sheet.diagram.tags) {
        if (tag.frame.contains(at)) under.net = sheet.layoutNet[tag.net];
    }
    double nearest = kNear;
    for (const SheetWire& wire : sheet.diagram.wires) {
        const double away = distanceToStretch(at, wire.from, wire.to);
        if (wire.net >= 0 && away < nearest) nearest = away, under.net = sheet.layoutNet[wire.net];
    }
    return under;
}

QString sheetPartWords(const SheetPicture& picture, int part) {
    const Snapshot* live = picture.live();
    if (!live) return {};
    const PlacedPart& placed = picture.sheet->diagram.parts[part];
    if (placed.leads.size() != 2) return {};
    const Layout& layout = *picture.sheet->layout;
    const Figure a = live->shown().leadVolt(layout.leadIndex(part, placed.leads[0].lead));
    const Figure b = live->shown().leadVolt(layout.leadIndex(part, placed.leads[1].lead));
    const Figure through = live->shown().through(part).most();
    if (!a.isKnown() || !b.isKnown() || !through.isKnown()) return {};
    const std::string volts = (a - b).magnitude().text(), amperes = through.text();
    const bool gives = layout.bench->parts[part].kind->isSupply;
    return QString::fromStdString(gives ? "gives " + volts + ", " + amperes
                                        : volts + " across, " + amperes + " through");
}

}  // namespace tiepoint::ui
