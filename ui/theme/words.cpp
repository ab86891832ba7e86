#include "ui/theme/words.h"

#include "ui/theme/plain_text.h"

#include <QFontMetricsF>
#include <QHelpEvent>
#include <QToolTip>

#include <algorithm>
#include <cmath>

namespace tiepoint::ui {
namespace {

constexpr double kRoomSlack = 0.51;  ///< of a pixel: rooms are whole pixels, words are not
constexpr double kEndlessRoom = 1e5;

WordsWatch* watching = nullptr;

int flagsOf(Qt::Alignment alignment, bool wraps) {
    return static_cast<int>(alignment) | static_cast<int>(wraps ? Qt::TextWordWrap : Qt::TextSingleLine);
}

bool fits(const QString& words, const QFont& font, bool wraps, QSizeF room) {
    const QSizeF wanted = wordsSize(words, font, room.width(), wraps);
    return wanted.width() <= room.width() + kRoomSlack && wanted.height() <= room.height() + kRoomSlack;
}

/// So much of the beginning as fits, and the sign that there is more.
QString shortenedLines(const QString& words, const QFont& font, QSizeF room) {
    qsizetype least = 0, most = words.size();
    const auto beginning = [&](qsizetype count) { return words.left(count).trimmed() + QChar(0x2026); };
    while (least < most) {
        const qsizetype middle = (least + most + 1) / 2;
        if (fits(beginning(middle), font, true, room))
            least = middle;
        else
            most = middle - 1;
    }
    return beginning(least);
}

}  // namespace

WordsWatch::WordsWatch() { watching = this; }

WordsWatch::~WordsWatch() { watching = nullptr; }

double smallestPixels(double pixels) {
    return std::min(pixels, std::max(kSmallestLetters, kLeastLetterShare * pixels));
}

QSizeF wordsSize(const QString& words, const QFont& font, double breadth, bool wraps) {
    const QFontMetricsF metrics(font);
    if (!wraps) return {metrics.horizontalAdvance(words), metrics.height()};
    return metrics.boundingRect(QRectF(0, 0, breadth, kEndlessRoom), flagsOf(Qt::AlignLeft, true), words).size();
}

QFont fittingFont(const QString& words, const WordStyle& style, QSizeF room) {
    QFont font = style.font;
    const int least = static_cast<int>(std::ceil(smallestPixels(font.pixelSize())));
    while (font.pixelSize() > least && !fits(words, font, style.wraps, room)) font.setPixelSize(font.pixelSize() - 1);
    return font;
}

WordSheet::WordSheet(QWidget* of) : of_(of) { of->installEventFilter(this); }

QRectF WordSheet::draw(QPainter& painter, const QRectF& room, const QString& words, const WordStyle& style) {
    if (words.isEmpty()) return {room.topLeft(), QSizeF()};
    const QFont font = fittingFont(words, style, room.size());
    const QFontMetricsF metrics(font);
    const bool whole = fits(words, font, style.wraps, room.size());
    const QString shown = whole         ? words
                          : style.wraps ? shortenedLines(words, font, room.size())
                                        : metrics.elidedText(words, style.shortened, room.width());
    const int flags = flagsOf(style.alignment, style.wraps);
    painter.setFont(font);
    painter.setPen(style.colour);
    painter.drawText(room, flags | (whole ? Qt::TextDontClip : 0), shown);
    const QRectF ink = metrics.boundingRect(room, flags, shown);
    note(painter, words, room, ink, font.pixelSize(), whole);
    return ink;
}

QRectF WordSheet::drawForm(QPainter& painter, const QRectF& room, const QStringList& forms, const WordStyle& style) {
    if (forms.isEmpty()) return {room.topLeft(), QSizeF()};
    const auto stands = [&](const QString& form) {
        return fits(form, fittingFont(form, style, room.size()), style.wraps, room.size());
    };
    const auto found = std::ranges::find_if(forms, stands);
    const QString& chosen = found == forms.end() ? forms.back() : *found;
    if (chosen != forms.front()) cut_.push_back({painter.worldTransform().mapRect(room), forms.front()});
    return draw(painter, room, chosen, style);
}

void WordSheet::note(QPainter& painter, const QString& words, const QRectF& room, const QRectF& ink, double pixels,
                     bool whole) {
    // A painter's device transform is no business of the widget's, what the widget has moved is.
    const QTransform moved = painter.worldTransform();
    const QRectF place = moved.mapRect(room);
    if (!whole) cut_.push_back({place, words});
    if (watching) watching->hear({of_, words, place, moved.mapRect(ink), pixels, whole});
}

QString WordSheet::wholeAt(QPointF place) const {
    const auto found = std::ranges::find_if(cut_, [&](const Cut& cut) { return cut.room.contains(place); });
    return found == cut_.end() ? QString() : found->words;
}

bool WordSheet::eventFilter(QObject* watched, QEvent* event) {
    if (watched != of_ || event->type() != QEvent::ToolTip) return QObject::eventFilter(watched, event);
    const auto* help = static_cast<const QHelpEvent*>(event);
    const QString whole = wholeAt(help->pos());
    if (whole.isEmpty()) return false;
    QToolTip::showText(help->globalPos(), plainTip(whole), of_);
    return true;
}

}  // namespace tiepoint::ui
