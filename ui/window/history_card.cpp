#include "ui/window/history_card.h"

#include "ui/theme/panels.h"

#include <QKeyEvent>
#include <QPainter>

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr double kWidth = 380, kHistoryHeader = 56, kHistoryPad = 16, kHistoryRow = 38;
constexpr int kFewestRows = 6;
constexpr double kMostOfFrame = 0.92;

}  // namespace

HistoryCard::HistoryCard(QUndoStack& stack, QWidget* parent)
    : QWidget(parent),
      look_{&theme(ThemeName::Day), 1},
      list_(new QUndoView(&stack, this)) {
    list_->setEmptyLabel(QStringLiteral("As it was opened"));
    list_->setFrameShape(QFrame::NoFrame);
    list_->setWordWrap(true);
    list_->setResizeMode(QListView::Adjust);
    list_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    list_->setAccessibleName(QStringLiteral("History of edits"));
    setAccessibleName(QStringLiteral("History"));
    setFocusProxy(list_);
    hide();
}

void HistoryCard::setLook(const Look& look) {
    look_ = look;
    const Theme& theme = *look.theme;
    list_->setFont(look.font(text::kSmall + 1));
    list_->setStyleSheet(
        QStringLiteral("QListView { color: %1; background: %2; outline: none; }"
                       "QListView::item { padding: %5px %6px; border-radius: 4px; }"
                       "QListView::item:selected { color: %1; background: %3; border-left: %5px solid %4; }")
            .arg(theme.text.name(), theme.card.name(), mix(theme.card, theme.accent, 0.16).name(), theme.accent.name())
            .arg(look.ipx(5))
            .arg(look.ipx(10)));
    update();
}

void HistoryCard::placeIn(const QRect& frame) {
    const double wanted =
        look_.px(kHistoryHeader + kHistoryPad + kHistoryRow * std::max(kFewestRows, list_->stack()->count() + 1));
    const double height = std::min(wanted, frame.height() * kMostOfFrame);
    const double width = look_.px(kWidth);
    setGeometry(
        QRectF(frame.right() - width - look_.px(kHistoryPad), frame.top() + look_.px(6), width, height).toRect());
    list_->setGeometry(QRectF(look_.px(kHistoryPad), look_.px(kHistoryHeader), width - 2 * look_.px(kHistoryPad),
                              height - look_.px(kHistoryHeader + kHistoryPad))
                           .toRect());
}

void HistoryCard::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const double margin = look_.px(kCardMargin);
    paintCard(painter, look_, QRectF(rect()).adjusted(margin, margin, -margin, -margin));
    const double left = look_.px(kHistoryPad + 10);
    sheet_.begin();
    sheet_.draw(painter, QRectF(left, margin, width() - 2 * left, look_.px(kHistoryHeader) - margin),
                QStringLiteral("History"),
                {look_.font(text::kBody), look_.theme->dimText, Qt::AlignLeft | Qt::AlignVCenter});
}

void HistoryCard::keyPressEvent(QKeyEvent* event) {
    if (event->key() != Qt::Key_Escape) return QWidget::keyPressEvent(event);
    hide();
    Q_EMIT closed();
}

}  // namespace tiepoint::ui
