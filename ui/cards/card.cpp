#include "ui/cards/card.h"

#include "ui/paint/lettering.h"
#include "ui/theme/panels.h"

#include <algorithm>

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
    const QRectF line(box.left(), box.top(), box.width(), QFontMetricsF(font).height());
    // A smaller line stands on the middle of the larger one.
    sheet_.draw(painter, line, words, {font, colour, (side & Qt::AlignHorizontal_Mask) | Qt::AlignVCenter});
}

void Card::drawHeading(QPainter& painter, const QRectF& box, const QStringList& forms) const {
    const QFont font = look_.font(text::kBody);
    sheet_.drawForm(painter, QRectF(box.left(), box.top(), box.width(), QFontMetricsF(font).height()), forms,
                    {font, look_.theme->dimText, Qt::AlignLeft | Qt::AlignVCenter});
}

QRectF Card::drawBlock(QPainter& painter, const QRectF& room, const QString& words, const QFont& font,
                       const QColor& colour, Qt::Alignment side) const {
    return sheet_.draw(painter, room, words, {font, colour, side, true});
}

QRectF Card::drawBlock(QPainter& painter, const QRectF& room, const QStringList& forms, const QFont& font,
                       const QColor& colour) const {
    return sheet_.drawForm(painter, room, forms, {font, colour, Qt::AlignLeft | Qt::AlignTop, true});
}

void Card::drawFigure(QPainter& painter, const QRectF& box, const QString& figure, double at1080, const QColor& colour,
                      Qt::Alignment side) const {
    if (figure.isEmpty()) return;
    const double full = look_.px(at1080), wanted = textWidthMm(figure, {full, QFont::DemiBold});
    const double size = wanted <= box.width() ? full : std::max(smallestPixels(full), full * box.width() / wanted);
    const double middle =
        box.top() + QFontMetricsF(look_.font(at1080, QFont::DemiBold)).ascent() - kCapHeight * full / 2;
    const double x = side & Qt::AlignHCenter ? box.center().x() : side & Qt::AlignRight ? box.right() : box.left();
    drawText(painter, figure, QPointF(x, middle), {size, QFont::DemiBold}, colour, side);
    const double width = wanted * size / full, high = kCapHeight * size;
    const double left = side & Qt::AlignHCenter ? x - width / 2 : side & Qt::AlignRight ? x - width : x;
    const QRectF ink(left, middle - high / 2, width, high);
    sheet_.note(painter, figure, QRectF(box.left(), ink.top(), box.width(), high), ink, size, width <= box.width() + 1);
}

double Card::figureWidth(const QString& figure, double at1080) const {
    return textWidthMm(figure, {look_.px(at1080), QFont::DemiBold});
}

void Card::paintEvent(QPaintEvent*) {
    sheet_.begin();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    paintSurface(painter);
    paintBody(painter);
}

void Card::paintSurface(QPainter& painter) { paintCard(painter, look_, frame()); }

void Card::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    arrangeCard();
}

double Card::roomHeight(double most) const {
    constexpr double kUsualHeight = 215;  // as at the desk
    return std::min(most, look_.px(kUsualHeight));
}

}  // namespace tiepoint::ui
