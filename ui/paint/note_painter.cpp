#include "ui/paint/note_painter.h"

#include "ui/paint/lettering.h"
#include "ui/paint/shade.h"
#include "ui/theme/plain_text.h"

#include <QStringList>

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr Lettering kHand{1.9, QFont::Medium};
constexpr double kWidestMm = 32, kPadMm = 1.1, kLineMm = 2.5;
constexpr double kAwayMm = 2.4;  ///< from the hole to the slip
constexpr double kPinMm = 0.75, kEarMm = 1.3;
const QColor kPaper(0xf8ecb4);  ///< by day; the dark theme's slips are of its own card
constexpr double kPaperShare = 0.75;

/// Words in lines no broader than a slip; a word that is too long stands alone.
QStringList linesOf(const std::string& text) {
    QStringList lines;
    for (const QString& paragraph : plainLines(text).split(QLatin1Char('\n'))) {
        QString line;
        for (const QString& word : paragraph.split(QLatin1Char(' '), Qt::SkipEmptyParts)) {
            const QString longer = line.isEmpty() ? word : line + QLatin1Char(' ') + word;
            if (!line.isEmpty() && textWidthMm(longer, kHand) > kWidestMm) {
                lines << line;
                line = word;
            } else {
                line = longer;
            }
        }
        lines << line;
    }
    return lines;
}

QColor paperOf(const Theme& theme) {
    return theme.dark || theme.flat ? theme.card : blend(theme.card, kPaper, kPaperShare);
}

/// A slip with one corner folded over.
QPainterPath slipShape(const QRectF& frame) {
    QPainterPath path(frame.topLeft());
    path.lineTo(frame.right() - kEarMm, frame.top());
    path.lineTo(frame.right(), frame.top() + kEarMm);
    path.lineTo(frame.bottomRight());
    path.lineTo(frame.bottomLeft());
    path.closeSubpath();
    return path;
}

struct NoteMark {
    std::string text;
    Rect slip;
    Point hole;
    void paint(QPainter& painter, const Theme& theme) const {
        const QRectF frame = toQt(slip);
        const QPointF pin = toQt(hole);
        const QPointF corner(frame.left(), pin.y() < frame.top() ? frame.top() : frame.bottom());
        drawSoftShadow(painter, theme, frame, 0.2, {0.5, 0.7}, 0.5);
        painter.setPen(outlinePen(theme.dimText, theme.outlineMm));
        painter.drawLine(pin, corner);
        painter.setBrush(paperOf(theme));
        painter.drawPath(slipShape(frame));
        QPainterPath ear(frame.topRight() + QPointF(-kEarMm, 0));
        ear.lineTo(frame.right() - kEarMm, frame.top() + kEarMm);
        ear.lineTo(frame.right(), frame.top() + kEarMm);
        painter.drawPath(ear);
        painter.setBrush(theme.accent);
        painter.setPen(outlinePen(theme.arrowCasing, 0.3));
        painter.drawPath(disc(pin, kPinMm));
        double y = frame.top() + kPadMm + kLineMm / 2;
        for (const QString& line : linesOf(text)) {
            drawText(painter, line, {frame.left() + kPadMm, y}, kHand, theme.text, Qt::AlignLeft);
            y += kLineMm;
        }
    }
    friend bool operator==(const NoteMark&, const NoteMark&) = default;
};

}  // namespace

QRectF noteFrame(const Picture& picture, int note) {
    const Note& which = picture.bench().notes[static_cast<std::size_t>(note)];
    const Point at = picture.seenAt(which.at);
    const QStringList lines = linesOf(which.text);
    double width = 0;
    for (const QString& line : lines) width = std::max(width, textWidthMm(line, kHand));
    const QSizeF size(width + 2 * kPadMm + kEarMm / 2, static_cast<double>(lines.size()) * kLineMm + 2 * kPadMm);
    // Away from the middle of the boards, where there is less to hide.
    const double middle = picture.table->boardsMm.top + picture.table->boardsMm.height / 2;
    const double top = at.y < middle ? at.y - kAwayMm - size.height() : at.y + kAwayMm;
    return {QPointF(at.x + kAwayMm, top), size};
}

QRectF noteBounds(const Picture& picture, int note) {
    constexpr double kShadowMm = 2;
    const QPointF pin = toQt(picture.seenAt(picture.bench().notes[static_cast<std::size_t>(note)].at));
    return noteFrame(picture, note)
        .united(QRectF(pin, QSizeF(0.01, 0.01)))
        .adjusted(-kShadowMm, -kShadowMm, kShadowMm, kShadowMm);
}

void addNote(Patches& patches, const Picture& picture, int note) {
    const Note& which = picture.bench().notes[static_cast<std::size_t>(note)];
    patches.push_back(fixedPatch(noteBounds(picture, note),
                                 NoteMark{which.text, fromQt(noteFrame(picture, note)), picture.seenAt(which.at)}));
}

void addNotes(Patches& patches, const Picture& picture) {
    for (int note = 0; note < static_cast<int>(picture.bench().notes.size()); ++note) addNote(patches, picture, note);
}

}  // namespace tiepoint::ui
