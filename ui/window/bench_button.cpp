#include "ui/window/bench_button.h"

#include "ui/theme/panels.h"
#include "ui/theme/plain_text.h"

#include <QPainter>
#include <QPainterPath>

#include <utility>

namespace tiepoint::ui {
namespace {

constexpr double kButtonMargin = 4, kPictureAway = 7, kPictureShape = 1.5;
constexpr double kTopicSize = 27, kTopicLineSize = 21, kOwnSize = 22, kOwnLineSize = 19;
constexpr double kNumberRoom = 40;

}  // namespace

BenchButton::BenchButton(const QString& file, Words words, QWidget* parent)
    : QAbstractButton(parent),
      file_(file),
      words_(std::move(words)),
      look_{&theme(ThemeName::Day), 1} {
    setText(menuWords(words_.heading));
    setAccessibleName(words_.number.isEmpty() ? words_.heading
                                              : QStringLiteral("%1. %2").arg(words_.number, words_.heading));
    setAccessibleDescription(words_.line);
    setFocusPolicy(Qt::TabFocus);
    setAttribute(Qt::WA_Hover);
}

void BenchButton::setLook(const Look& look) {
    if (look_ == look) return;
    look_ = look;
    picture_ = {};
    update();
    Q_EMIT resized();
}

QRectF BenchButton::pictureBox() const {
    const double away = look_.px(kPictureAway + kButtonMargin);
    const double high = height() - 2 * away;
    return {away, away, high * kPictureShape, high};
}

QSize BenchButton::pictureSize() const { return pictureBox().size().toSize(); }

void BenchButton::setPicture(const QImage& picture) {
    picture_ = QPixmap::fromImage(picture);
    update();
}

void BenchButton::resizeEvent(QResizeEvent* event) {
    QAbstractButton::resizeEvent(event);
    Q_EMIT resized();
}

void BenchButton::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setRenderHint(QPainter::SmoothPixmapTransform);
    const double margin = look_.px(kButtonMargin);
    paintButton(painter, look_, QRectF(rect()).adjusted(margin, margin, -margin, -margin),
                {false, underMouse(), isDown(), hasFocus()});
    const QRectF box = pictureBox();
    QPainterPath corner;
    corner.addRoundedRect(box, look_.px(5), look_.px(5));
    painter.save();
    painter.setClipPath(corner);
    painter.fillPath(corner, look_.theme->benchTop);
    if (isDrawn()) painter.drawPixmap(box, picture_, QRectF(picture_.rect()));
    painter.restore();
    paintWords(painter, box.right() + look_.px(18));
}

void BenchButton::paintWords(QPainter& painter, double left) {
    const Theme& theme = *look_.theme;
    const bool own = words_.number.isEmpty();
    const QFont heading = look_.font(own ? kOwnSize : kTopicSize, own ? QFont::Medium : QFont::DemiBold);
    const QFont line = look_.font(own ? kOwnLineSize : kTopicLineSize);
    const QFontMetricsF headingMetrics(heading), lineMetrics(line);
    const double top = (height() - headingMetrics.height() - lineMetrics.height()) / 2;
    sheet_.begin();
    if (!own) {
        sheet_.draw(painter, QRectF(left, top, look_.px(kNumberRoom - 14), headingMetrics.height()), words_.number,
                    {heading, theme.accent, Qt::AlignRight | Qt::AlignTop});
        left += look_.px(kNumberRoom);
    }
    const double room = width() - left - look_.px(14);
    const double aside = words_.aside.isEmpty() ? 0 : lineMetrics.horizontalAdvance(words_.aside) + look_.px(10);
    if (aside > 0) {
        sheet_.draw(painter, QRectF(left + room - aside, top, aside, headingMetrics.height()), words_.aside,
                    {line, theme.dimText, Qt::AlignRight | Qt::AlignVCenter});
    }
    sheet_.draw(painter, QRectF(left, top, room - aside, headingMetrics.height()), words_.heading,
                {heading, theme.text});
    sheet_.draw(painter, QRectF(left, top + headingMetrics.height(), room, lineMetrics.height()), words_.line,
                {line, own ? theme.dimText : theme.text});
}

WordButton::WordButton(const QString& word, Shape shape, QWidget* parent)
    : QAbstractButton(parent),
      shape_(shape),
      look_{&theme(ThemeName::Day), 1} {
    setText(word);
    setFocusPolicy(Qt::TabFocus);
    setAttribute(Qt::WA_Hover);
}

void WordButton::setLook(const Look& look) {
    look_ = look;
    update();
}

double WordButton::wantedWidth() const {
    return QFontMetricsF(look_.font(text::kBody - 2, QFont::Medium)).horizontalAdvance(text()) + look_.px(44);
}

void WordButton::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Theme& theme = *look_.theme;
    const double margin = look_.px(kButtonMargin);
    const QRectF frame = QRectF(rect()).adjusted(margin, margin, -margin, -margin);
    QFont font = look_.font(text::kBody - 2, QFont::Medium);
    QColor ink = shape_ == Shape::Link ? theme.accent : theme.text;
    if (shape_ == Shape::Filled) {
        ink = theme.card;
        painter.setPen(hasFocus() ? QPen(theme.text, look_.px(3)) : QPen(Qt::NoPen));
        painter.setBrush(underMouse() || isDown() ? mix(theme.accent, theme.text, 0.18) : theme.accent);
        painter.drawRoundedRect(frame, look_.px(8), look_.px(8));
    } else if (shape_ == Shape::Plain) {
        paintButton(painter, look_, frame, {false, underMouse(), isDown(), hasFocus()});
    }
    font.setUnderline(shape_ == Shape::Link && (underMouse() || hasFocus()));
    sheet_.begin();
    sheet_.draw(painter, QRectF(rect()), text(), {font, ink, Qt::AlignCenter});
}

}  // namespace tiepoint::ui
