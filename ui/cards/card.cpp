#include "ui/cards/card.h"

#include "ui/paint/lettering.h"
#include "ui/theme/panels.h"

namespace tiepoint::ui {
namespace {

constexpr double kPadding = 26;

}  // namespace

Card::Card(QWidget* parent) : QWidget(parent), look_{&theme(ThemeName::Day), 1} {}

void Card::setLook(const Look& look) {
    if (look_ == look) return;
    look_ = look;
    arrangeCard();
    update();
}

QRectF Card::frame() const {
    const double margin = look_.px(kCardMargin);
    return QRectF(rect()).adjusted(margin, margin, -margin, -margin);
}

QRectF Card::body() const {
    const double side = look_.px(kPadding);
    return frame().adjusted(side, look_.px(18), -side, -look_.px(14));
}

void Card::drawLine(QPainter& painter, const QRectF& box, const QString& words, const QFont& font, const QColor& colour,
                    Qt::Alignment side) const {
    const QFontMetricsF metrics(font);
    painter.setFont(font);
    painter.setPen(colour);
    const QRectF line(box.left(), box.top(), box.width(), metrics.height());
    painter.drawText(line, static_cast<int>(side | Qt::AlignTop) | Qt::TextSingleLine,
                     metrics.elidedText(words, Qt::ElideRight, box.width()));
}

void Card::drawFigure(QPainter& painter, const QRectF& box, const QString& figure, double at1080, const QColor& colour,
                      Qt::Alignment side) const {
    const double size = look_.px(at1080);
    const double middle =
        box.top() + QFontMetricsF(look_.font(at1080, QFont::DemiBold)).ascent() - kCapHeight * size / 2;
    const double x = side & Qt::AlignHCenter ? box.center().x() : side & Qt::AlignRight ? box.right() : box.left();
    drawText(painter, figure, QPointF(x, middle), {size, QFont::DemiBold}, colour, side);
}

double Card::figureWidth(const QString& figure, double at1080) const {
    return textWidthMm(figure, {look_.px(at1080), QFont::DemiBold});
}

void Card::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    paintCard(painter, look_, frame());
    paintBody(painter);
}

void Card::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    arrangeCard();
}

}  // namespace tiepoint::ui
