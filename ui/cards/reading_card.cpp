#include "ui/cards/reading_card.h"

#include "ui/cards/aside_card.h"
#include "ui/theme/panels.h"

#include <algorithm>

namespace tiepoint::ui {
namespace {

// The bar ends beyond the limit, so that a share above one can be seen: the limit stands at this part of its length.
constexpr double kLimitAt = 0.86;
constexpr double kSideSize = 20;
constexpr double kSideWidth = 136;         // holds "out 999 mA"
constexpr double kUsualNumberWidth = 330;  // so that in and out stand still while the number changes

}  // namespace

ReadingCard::ReadingCard(QWidget* parent) : Card(parent), why_(new QToolButton(this)) {
    setAccessibleName(QStringLiteral("Reading"));
    why_->setText(QStringLiteral("Why?"));
    why_->hide();
    connect(why_, &QToolButton::clicked, this, [this] { Q_EMIT whyAsked(text_.part); });
}

void ReadingCard::setAnswered(bool answered) {
    answered_ = answered;
    showButton();
}

void ReadingCard::showButton() {
    const QString asked = QStringLiteral("Why does %1 do that?").arg(QString::fromStdString(text_.part));
    why_->setVisible(answered_ && !text_.part.empty());
    why_->setToolTip(asked);
    why_->setAccessibleName(asked);
}

void ReadingCard::arrangeCard() {
    why_->setFont(look().font(text::kBody));
    why_->setStyleSheet(wordButtonStyle(look()));
    const QSize size = why_->sizeHint();
    const QRectF box = body();
    why_->setGeometry(QRect(
        QPoint(static_cast<int>(box.right() + look().px(4)) - size.width(), static_cast<int>(box.top() - look().px(4))),
        size));
}

void ReadingCard::setText(const ReadingText& text) {
    if (text_ == text) return;
    text_ = text;
    setAccessibleDescription(text.title + QStringLiteral(": ") + text.big + QStringLiteral(". ") + text.note);
    showButton();
    update();
}

void ReadingCard::paintBody(QPainter& painter) {
    const Theme& theme = *look().theme;
    QRectF box = body();
    const double titleWidth = box.width() - (why_->isVisibleTo(this) ? why_->width() : 0);
    drawHeading(painter, QRectF(box.left(), box.top(), titleWidth, 0), text_.titles());
    const double side = text_.in.isEmpty() ? 0 : look().px(kSideWidth);
    const double beside = side > 0 ? side + look().px(16) : 0;
    const double numberWidth = paintNumber(painter, QRectF(box.left(), box.top(), box.width() - beside, box.height()));
    const double sideLeft =
        std::min(box.right() - side, box.left() + std::max(numberWidth + look().px(30), look().px(kUsualNumberWidth)));
    paintInAndOut(painter, QRectF(sideLeft, box.top() + look().px(47), box.right() - sideLeft, look().px(60)));
    const double barTop = frame().bottom() - look().px(70);
    if (text_.share) paintBar(painter, QRectF(box.left(), barTop, box.width(), look().px(10)));
    const double noteTop = frame().bottom() - look().px(text_.share ? 52 : 66);
    const double noteHeight = frame().bottom() - look().px(8) - noteTop;
    drawBlock(painter, QRectF(box.left(), noteTop, box.width(), noteHeight), text_.note, look().font(text::kBody),
              theme.dimText);
}

double ReadingCard::paintNumber(QPainter& painter, const QRectF& box) const {
    const double wanted = figureWidth(text_.big, text::kBigReading);
    const double size = text::kBigReading * std::min(1.0, box.width() / std::max(wanted, 1.0));
    const double lower = look().px(19 + (text::kBigReading - size) / 2);
    drawFigure(painter, box.translated(-look().px(3), lower), text_.big, size, look().theme->text);
    return std::min(wanted, box.width());
}

void ReadingCard::paintInAndOut(QPainter& painter, const QRectF& box) const {
    if (text_.in.isEmpty()) return;
    const Theme& theme = *look().theme;
    const QFont words = look().font(kSideSize);
    const double half = box.height() / 2;
    const double wordWidth = QFontMetricsF(words).horizontalAdvance(QStringLiteral("out ")) + look().px(2);
    const auto row = [&](double top, const QString& word, const QString& value) {
        drawLine(painter, QRectF(box.left(), top, wordWidth, half), word, words, theme.dimText);
        drawFigure(painter, QRectF(box.left() + wordWidth, top, box.width() - wordWidth, half), value, kSideSize,
                   theme.text);
    };
    row(box.top(), QStringLiteral("in"), text_.in);
    row(box.top() + half, QStringLiteral("out"), text_.out);
}

void ReadingCard::paintBar(QPainter& painter, const QRectF& box) const {
    const Theme& theme = *look().theme;
    const double radius = box.height() / 2;
    const bool over = *text_.share > 1;
    painter.setPen(theme.flat ? QPen(theme.cardEdge, look().px(1.6)) : QPen(Qt::NoPen));
    painter.setBrush(theme.flat ? theme.card : mix(theme.card, theme.cardEdge, theme.dark ? 0.8 : 0.75));
    painter.drawRoundedRect(box, radius, radius);
    const double filled = std::clamp(*text_.share * kLimitAt, 0.0, 1.0) * box.width();
    painter.setPen(Qt::NoPen);
    painter.setBrush(over ? theme.overload : theme.text);
    painter.setClipRect(QRectF(box.left(), box.top(), filled, box.height()));
    painter.drawRoundedRect(box, radius, radius);
    painter.setClipping(false);
    const double at = box.left() + kLimitAt * box.width();
    painter.setPen(QPen(over ? theme.text : theme.overload, look().px(3)));
    painter.drawLine(QPointF(at, box.center().y() - look().px(13)), QPointF(at, box.center().y() + look().px(13)));
}

}  // namespace tiepoint::ui
