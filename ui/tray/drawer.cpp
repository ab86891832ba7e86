#include "ui/tray/drawer.h"

#include "ui/theme/panels.h"

#include <QKeyEvent>
#include <QPainter>

#include <algorithm>
#include <cmath>

namespace tiepoint::ui {
namespace {

constexpr int kMostColumns = 8;
constexpr double kItemHeight = 104;
constexpr double kDrawerPad = 16;
constexpr double kDrawerGap = 6;
constexpr double kWordsBreadth = 620;  // of what is said, at least, before it takes a second line
constexpr double kOfferHeight = 34;
constexpr double kDrawerSide = 24;  // in line with the cards

}  // namespace

Drawer::Drawer(QWidget* parent) : QWidget(parent), look_{&theme(ThemeName::Day), 1}, offer_(new QToolButton(this)) {
    hide();
    offer_->hide();
    offer_->setFocusPolicy(Qt::TabFocus);
    connect(offer_, &QToolButton::clicked, this, &Drawer::offerTaken);
    setFocusPolicy(Qt::ClickFocus);
}

void Drawer::setLook(const Look& look) {
    look_ = look;
    hide();  // it stood above a compartment that has moved
}

void Drawer::openFor(const TrayFamily& family, QPoint above, const QString& words) {
    for (TrayButton* button : buttons_)
        button->deleteLater();  // one of them may be the sender of the click that led here
    buttons_.clear();
    family_ = family.name;
    words_ = words;
    setAccessibleName(family_);
    setAccessibleDescription(words_);
    for (const TrayItem& item : family.items) {
        auto* button = new TrayButton(item, item.label, TrayButton::Shape::DrawerItem, this);
        button->setLook(look_);
        connect(button, &TrayButton::dragged, this, &Drawer::dragged);
        connect(button, &QAbstractButton::clicked, this, [this, item] { Q_EMIT clicked(item); });
        buttons_.push_back(button);
        button->show();
    }
    offer_->hide();
    above_ = above;
    arrange(above);
    show();
    raise();
}

void Drawer::offer(const QString& word) {
    offer_->setText(word);
    offer_->show();
    arrange(above_);
}

void Drawer::arrange(QPoint above) {
    double widest = 0;
    for (const TrayButton* button : buttons_) widest = std::max(widest, button->wantedWidth());
    const int count = static_cast<int>(buttons_.size());
    const double pad = look_.px(kDrawerPad), gap = look_.px(kDrawerGap), height = look_.px(kItemHeight);
    const int side = look_.ipx(kDrawerSide);
    const double room = parentWidget()->width() - 2 * side - 2 * pad + gap;
    const int most = std::clamp(static_cast<int>(room / (widest + gap)), 1, kMostColumns);
    const int rows = (count + most - 1) / most;  // none where there are but words
    const int columns = std::max(1, (count + rows - 1) / std::max(1, rows));
    QSize size(static_cast<int>(2 * pad + columns * (widest + gap) - gap),
               static_cast<int>(2 * pad + rows * (height + gap) - gap));
    const QSize words =
        wordsSize(std::min(std::max(size.width(), look_.ipx(kWordsBreadth)), parentWidget()->width() - 2 * side));
    if (!words.isEmpty())
        size = {std::max(size.width(), words.width()), size.height() + words.height() + static_cast<int>(gap)};
    const int offered = offer_->isHidden() ? 0 : look_.ipx(kOfferHeight);
    size.rheight() += offered;
    const int left =
        std::clamp(above.x() - size.width() / 2, side, std::max(side, parentWidget()->width() - size.width() - side));
    setGeometry(QRect(QPoint(left, above.y() - size.height()), size));
    for (int i = 0; i < count; ++i) {
        const int column = i % columns, row = i / columns;
        const QPointF at(pad + column * (widest + gap), pad + row * (height + gap));
        buttons_[i]->setGeometry(QRectF(at, QSizeF(widest, height)).toRect());
    }
    if (offered == 0) return;
    offer_->setFont(look_.font(text::kSmall));
    offer_->setStyleSheet(wordButtonStyle(look_));
    const int breadth = std::min(offer_->sizeHint().width(), size.width() - static_cast<int>(2 * pad));
    offer_->setGeometry(size.width() - static_cast<int>(pad) - breadth,
                        size.height() - static_cast<int>(pad / 2) - offered, breadth, offered);
}

QSize Drawer::wordsSize(int breadth) const {
    if (words_.isEmpty()) return {};
    const double pad = look_.px(kDrawerPad), high = parentWidget()->height();
    const QRectF box =
        QFontMetricsF(look_.font(text::kSmall))
            .boundingRect(QRectF(0, 0, breadth - 2 * pad, high), Qt::AlignLeft | Qt::TextWordWrap, words_);
    return {static_cast<int>(std::ceil(box.width() + 2 * pad)) + 1, static_cast<int>(std::ceil(box.height()))};
}

void Drawer::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const double margin = look_.px(kCardMargin);
    paintCard(painter, look_, QRectF(rect()).adjusted(margin, margin, -margin, -margin));
    if (words_.isEmpty()) return;
    const double pad = look_.px(kDrawerPad), lines = wordsSize(width()).height();
    const double below = offer_->isHidden() ? 0 : offer_->height();
    sheet_.begin();
    sheet_.draw(painter, QRectF(pad, height() - pad - below - lines, width() - 2 * pad, lines), words_,
                {look_.font(text::kSmall), look_.theme->text, Qt::AlignLeft | Qt::AlignVCenter, true});
}

void Drawer::hideEvent(QHideEvent* event) {
    QWidget::hideEvent(event);
    Q_EMIT closed();
}

void Drawer::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape)
        hide();
    else
        QWidget::keyPressEvent(event);
}

}  // namespace tiepoint::ui
