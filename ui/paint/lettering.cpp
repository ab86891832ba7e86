#include "ui/paint/lettering.h"

#include "ui/theme/theme.h"

#include <QFontMetricsF>

#include <algorithm>
#include <map>
#include <utility>

namespace tiepoint::ui {
namespace {

// Outlines are taken at this size and scaled, so that hinting and rounding of small sizes play no part.
constexpr double kDrawnPx = 200;
constexpr double kTracking = -0.014 * kDrawnPx;  ///< letters a little closer, in place of kerning

struct Glyph {
    QPainterPath outline;
    double advance = 0;
};

/// The glyphs of one weight at kDrawnPx.
class Face {
public:
    explicit Face(QFont::Weight weight) : font_(uiFont(kDrawnPx, weight)), metrics_(font_) {
        for (char16_t digit = u'0'; digit <= u'9'; ++digit)
            cell_ = std::max(cell_, metrics_.horizontalAdvance(QChar(digit)));
    }

    const Glyph& glyph(QChar character) {
        const auto found = glyphs_.find(character);
        if (found != glyphs_.end()) return found->second;
        const double own = metrics_.horizontalAdvance(character);
        Glyph made;
        made.advance = (character.isDigit() ? cell_ : own) + kTracking;
        made.outline.setFillRule(Qt::WindingFill);
        made.outline.addText((made.advance - kTracking - own) / 2, 0, font_, QString(character));
        return glyphs_.emplace(character, std::move(made)).first->second;
    }

private:
    QFont font_;
    QFontMetricsF metrics_;
    double cell_ = 0;
    std::map<QChar, Glyph> glyphs_;
};

Face& face(QFont::Weight weight) {
    thread_local std::map<QFont::Weight, Face> faces;
    return faces.try_emplace(weight, weight).first->second;
}

}  // namespace

double textWidthMm(const QString& text, const Lettering& lettering) {
    Face& glyphs = face(lettering.weight);
    double advance = 0;
    for (const QChar character : text) advance += glyphs.glyph(character).advance;
    return advance * lettering.sizeMm / kDrawnPx;
}

QPainterPath textPath(const QString& text, QPointF baseline, const Lettering& lettering) {
    Face& glyphs = face(lettering.weight);
    QPainterPath outlines;
    outlines.setFillRule(Qt::WindingFill);
    double advance = 0;
    for (const QChar character : text) {
        const Glyph& glyph = glyphs.glyph(character);
        outlines.addPath(glyph.outline.translated(advance, 0));
        advance += glyph.advance;
    }
    const double scale = lettering.sizeMm / kDrawnPx;
    return QTransform::fromScale(scale, scale).map(outlines).translated(baseline);
}

void drawText(QPainter& painter, const QString& text, QPointF at, const Lettering& lettering, const QColor& colour,
              Qt::Alignment align) {
    const double width = textWidthMm(text, lettering);
    double left = at.x();
    if (align.testFlag(Qt::AlignHCenter)) left -= width / 2;
    if (align.testFlag(Qt::AlignRight)) left -= width;
    painter.fillPath(textPath(text, {left, at.y() + kCapHeight * lettering.sizeMm / 2}, lettering), colour);
}

}  // namespace tiepoint::ui
