#include "ui/window/message_bar.h"

#include "ui/theme/panels.h"
#include "ui/theme/plain_text.h"

#include <QPainter>

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr double kBarHeight = 60;
constexpr double kBarPad = 22;

}  // namespace

MessageBar::MessageBar(QWidget* parent) : QWidget(parent), look_{&theme(ThemeName::Day), 1}, label_(new QLabel(this)) {
    label_->setTextFormat(Qt::PlainText);
    label_->setTextInteractionFlags(Qt::TextSelectableByMouse);
    hide();
}

void MessageBar::setLook(const Look& look) {
    look_ = look;
    const Theme& theme = *look.theme;
    setStyleSheet(
        QStringLiteral(
            "QLabel { color: %1; background: transparent; }"
            "QToolButton { color: %2; background: transparent; border: none; padding: 0 %3px; font-weight: 600; }"
            "QToolButton:hover, QToolButton:focus { text-decoration: underline; }")
            .arg(theme.text.name(), theme.accent.name())
            .arg(look.ipx(10)));
    arrange();
}

void MessageBar::say(Tone tone, const QString& line, const std::vector<Offer>& offers) {
    tone_ = tone;
    line_ = plainText(line);
    label_->setToolTip(plainTip(line_));
    for (QToolButton* key : keys_) key->deleteLater();  // one of them may be the sender
    keys_.clear();
    for (const Offer& offer : offers) addKey(offer.word, offer.run);
    addKey(QStringLiteral("\u00d7"), [] {});
    keys_.back()->setAccessibleName(QStringLiteral("Close"));
    setAccessibleName(line_);
    show();
    raise();
    arrange();
    update();
}

void MessageBar::addKey(const QString& word, const std::function<void()>& run) {
    auto* key = new QToolButton(this);
    key->setText(word);
    connect(key, &QToolButton::clicked, this, [this, run] {
        hide();
        run();
    });
    key->show();
    keys_.push_back(key);
}

void MessageBar::placeIn(const QRect& frame) {
    frame_ = frame;
    arrange();
}

void MessageBar::arrange() {
    const QFont font = look_.font(text::kBody - 2);
    label_->setFont(font);
    double keysWidth = 0;
    for (QToolButton* key : keys_) {
        key->setFont(font);
        keysWidth += key->sizeHint().width();
    }
    const double words = QFontMetricsF(font).horizontalAdvance(line_) + look_.px(8);
    const double wanted = words + keysWidth + look_.px(3 * kBarPad);
    const double width = std::min<double>(wanted, frame_.width() - 2 * look_.px(kBarPad));
    setGeometry(
        QRectF(frame_.center().x() - width / 2, frame_.top() + look_.px(4), width, look_.px(kBarHeight)).toRect());
    const double room = width - keysWidth - look_.px(2.4 * kBarPad);
    label_->setText(QFontMetricsF(font).elidedText(line_, Qt::ElideMiddle, room));
    label_->setGeometry(QRectF(look_.px(kBarPad), 0, room, height()).toRect());
    double left = look_.px(1.4 * kBarPad) + room;
    for (QToolButton* key : keys_) {
        key->setGeometry(QRectF(left, look_.px(8), key->sizeHint().width(), height() - look_.px(16)).toRect());
        left += key->width();
    }
}

void MessageBar::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const double margin = look_.px(kCardMargin);
    const QRectF frame = QRectF(rect()).adjusted(margin, margin, -margin, -margin);
    paintCard(painter, look_, frame);
    const QColor edge = tone_ == Tone::Trouble ? look_.theme->overload : look_.theme->accent;
    painter.setPen(Qt::NoPen);
    painter.setBrush(edge);
    painter.drawRoundedRect(QRectF(frame.left(), frame.top(), look_.px(7), frame.height()), look_.px(3), look_.px(3));
}

}  // namespace tiepoint::ui
