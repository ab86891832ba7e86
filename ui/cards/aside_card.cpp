#include "ui/cards/aside_card.h"

#include <QKeyEvent>
#include <QScrollBar>

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr double kButtonSize = 34;

}  // namespace

AsideCard::AsideCard(QWidget* parent) : Card(parent), close_(new QToolButton(this)) {
    close_->setText(QStringLiteral("\u00d7"));
    close_->setAccessibleName(QStringLiteral("Close"));
    close_->setToolTip(QStringLiteral("Close, and show the legend again"));
    connect(close_, &QToolButton::clicked, this, &AsideCard::closed);
}

void AsideCard::arrangeCard() {
    const int size = look().ipx(kButtonSize);
    const QRectF surface = frame();
    close_->setFont(look().font(text::kBody));
    close_->setStyleSheet(wordButtonStyle(look()));
    close_->setGeometry(
        QRectF(surface.right() - size - look().px(8), surface.top() + look().px(8), size, size).toRect());
}

double AsideCard::widthBesideButton() const { return body().width() - look().px(kButtonSize - 10); }

void AsideCard::scrollWords(QScrollArea& area, QLabel& words) {
    words.setWordWrap(true);
    words.setAlignment(Qt::AlignTop | Qt::AlignLeft);
    words.setTextFormat(Qt::RichText);
    words.setTextInteractionFlags(Qt::TextSelectableByMouse);
    words.setFocusPolicy(Qt::NoFocus);  // a click leaves the keyboard with the board
    area.setWidget(&words);
    area.setWidgetResizable(true);
    area.setFrameShape(QFrame::NoFrame);
    area.setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    area.viewport()->setAutoFillBackground(false);
}

void AsideCard::settleWords(QScrollArea& area, QLabel& words) {
    words.ensurePolished();
    const auto high = [&words](int breadth) { return std::max(0, words.heightForWidth(breadth)); };
    const bool scrolls = high(area.width()) > area.height();
    words.setMinimumHeight(high(area.width() - (scrolls ? area.verticalScrollBar()->sizeHint().width() : 0)));
}

void AsideCard::keyPressEvent(QKeyEvent* event) {
    if (event->key() != Qt::Key_Escape) return Card::keyPressEvent(event);
    Q_EMIT closed();
}

}  // namespace tiepoint::ui
