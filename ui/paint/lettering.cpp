#include "ui/paint/lettering.h"

#include "ui/paint/letter_sheet.h"
#include "ui/theme/theme.h"

#include <QFontMetricsF>

#include <algorithm>
#include <map>
#include <utility>

namespace tiepoint::ui {
namespace {

constexpr double kTracking = -0.014 * kDrawnPx;  ///< letters a little closer, in place of kerning

struct Glyph {
    QString letter;
    QPainterPath outline;
    double advance = 0;
    double bearing = 0;  ///< from where it begins to where the font's own letter does
};

/// The glyphs of one weight at kDrawnPx.
class Face {
public:
    explicit Face(QFont::Weight weight) : font_(uiFont(kDrawnPx, weight)), metrics_(font_) {
        for (char16_t digit = u'0'; digit <= u'9'; ++digit)
            cell_ = std::max(cell_, metrics_.horizontalAdvance(QChar(digit)));
    }

    const Glyph& glyph(char32_t character) {
        const auto found = glyphs_.find(character);
        if (found != glyphs_.end()) return found->second;
        Glyph made;
        made.letter = QString::fromUcs4(&character, 1);
        const double own = metrics_.horizontalAdvance(made.letter);
        made.advance = (QChar::isDigit(character) ? cell_ : own) + kTracking;
        made.bearing = (made.advance - kTracking - own) / 2;
        made.outline.setFillRule(Qt::WindingFill);
        made.outline.addText(made.bearing, 0, font_, made.letter);
        return glyphs_.emplace(character, std::move(made)).first->second;
    }

private:
    QFont font_;
    QFontMetricsF metrics_;
    double cell_ = 0;
    std::map<char32_t, Glyph> glyphs_;
};

Face& face(QFont::Weight weight) {
    thread_local std::map<QFont::Weight, Face> faces;
    return faces.try_emplace(weight, weight).first->second;
}

LetterLine letterLine(const QString& text, const Lettering& lettering, const QColor& colour) {
    Face& glyphs = face(lettering.weight);
    const double scale = lettering.sizeMm / kDrawnPx;
    LetterLine line{text, lettering, colour, 0, {}};
    for (const char32_t character : text.toUcs4()) {
        const Glyph& glyph = glyphs.glyph(character);
        line.letters.push_back({glyph.letter, line.widthMm + glyph.bearing * scale});
        line.widthMm += glyph.advance * scale;
    }
    return line;
}

}  // namespace

double textWidthMm(const QString& text, const Lettering& lettering) {
    Face& glyphs = face(lettering.weight);
    double advance = 0;
    for (const char32_t character : text.toUcs4()) advance += glyphs.glyph(character).advance;
    return advance * lettering.sizeMm / kDrawnPx;
}

QPainterPath textPath(const QString& text, QPointF baseline, const Lettering& lettering) {
    Face& glyphs = face(lettering.weight);
    QPainterPath outlines;
    outlines.setFillRule(Qt::WindingFill);
    double advance = 0;
    for (const char32_t character : text.toUcs4()) {
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
    const QPointF baseline(left, at.y() + kCapHeight * lettering.sizeMm / 2);
    if (auto* sheet = dynamic_cast<LetterSheet*>(painter.device()))
        return sheet->drawLetters(painter, letterLine(text, lettering, colour), baseline);
    painter.fillPath(textPath(text, baseline, lettering), colour);
}

}  // namespace tiepoint::ui
