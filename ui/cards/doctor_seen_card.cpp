#include "ui/cards/doctor_seen_card.h"

#include "ui/cards/hunt_cause_card.h"
#include "ui/theme/panels.h"

#include <QPainter>

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr double kSeenHead = 42, kSeenGap = 10, kHotHigh = 34, kTileWord = 34;
constexpr int kTileColumns = 2;

}  // namespace

DoctorSeenCard::DoctorSeenCard(QWidget* parent) : Card(parent) {
    setAccessibleName(tr("What do you see?"));
    const QStringList words{tr("Dark"), tr("Dim"), tr("Lit"), tr("Always lit"), tr("Hot, or it smells")};
    const QStringList tips{tr("It doesn't shine"), tr("It shines, and clearly less than planned"), tr("It shines"),
                           tr("It shines in every position of the switches"), tr("Switch the supply off now")};
    for (int button = 0; button < words.size(); ++button) {
        buttons_.push_back(new QToolButton(this));
        buttons_.back()->setText(words[button]);
        buttons_.back()->setToolTip(tips[button]);
        buttons_.back()->hide();  // until there is a light
        if (button != Hot) buttons_.back()->setToolButtonStyle(Qt::ToolButtonTextUnderIcon);
        connect(buttons_.back(), &QToolButton::clicked, this, [this, button] { Q_EMIT seen(button); });
    }
}

void DoctorSeenCard::showLight(const DoctorLight& light) {
    if (light == light_) return;
    light_ = light;
    for (int button = 0; button <= Hot; ++button)
        buttons_[static_cast<std::size_t>(button)]->setVisible(!light.id.isEmpty() &&
                                                               (button != AlwaysLit || light.hasThrows));
    setAccessibleDescription(light.id + QLatin1Char(' ') + light.position);
    arrangeCard();
    update();
}

void DoctorSeenCard::setPictures(const std::vector<QImage>& pictures) {
    for (std::size_t button = 0; button < pictures.size() && button < Hot; ++button)
        buttons_[button]->setIcon(QIcon(QPixmap::fromImage(pictures[button])));
    arrangeCard();
}

QSizeF DoctorSeenCard::tileSize() const {
    const QRectF box = body();
    const double gap = look().px(kSeenGap);
    return {(box.width() - gap) / kTileColumns,
            (box.height() - look().px(kSeenHead + kHotHigh) - 2 * gap) / kTileColumns};
}

QSize DoctorSeenCard::pictureSize() const {
    const QSizeF tile = tileSize();
    return QSizeF(std::max(16.0, tile.width() - look().px(20)),
                  std::max(12.0, tile.height() - look().px(kTileWord + 12)))
        .toSize();
}

void DoctorSeenCard::arrangeCard() {
    const QRectF box = body();
    const QSizeF tile = tileSize();
    const double gap = look().px(kSeenGap), top = box.top() + look().px(kSeenHead);
    for (int button = 0; button < Hot; ++button) {
        QToolButton* each = buttons_[static_cast<std::size_t>(button)];
        const int column = button % kTileColumns, row = button / kTileColumns;
        each->setStyleSheet(choiceButtonStyle(look()));
        each->setFont(look().font(text::kSmall + 1, QFont::DemiBold));
        each->setIconSize(pictureSize());
        each->setGeometry(
            QRectF(QPointF(box.left() + column * (tile.width() + gap), top + row * (tile.height() + gap)), tile)
                .toRect());
    }
    QToolButton* hot = buttons_[Hot];
    hot->setStyleSheet(wordButtonStyle(look()));
    hot->setFont(look().font(text::kSmall, QFont::DemiBold));
    hot->setGeometry(QRectF(box.left(), box.bottom() - look().px(kHotHigh), box.width(), look().px(kHotHigh)).toRect());
}

void DoctorSeenCard::paintBody(QPainter& painter) {
    const QRectF box = body();
    if (light_.id.isEmpty()) {
        drawHeading(painter, box, {tr("What do you see?")});
        drawBlock(painter, QRectF(box.left(), box.top() + look().px(kSeenHead), box.width(), look().px(120)),
                  tr("This plan has no light. Measure instead: click a hole."), look().font(text::kSmall),
                  look().theme->dimText);
        return;
    }
    const QString when = light_.position.isEmpty() ? QString() : QLatin1Char(' ') + light_.position;
    if (light_.isNext) {
        // The same frame as the next measurement has.
        painter.setPen(QPen(look().theme->accent, look().px(2)));
        painter.setBrush(mix(look().theme->card, look().theme->accent, 0.08));
        const double out = look().px(9);
        painter.drawRoundedRect(QRectF(box.left() - out, box.top() - look().px(4), box.width() + 2 * out,
                                       buttons_[Lit]->geometry().bottom() + out - box.top() + look().px(4)),
                                look().px(7), look().px(7));
        return drawLine(painter, box, tr("Next: how does %1 look%2?").arg(light_.id, when),
                        look().font(text::kBody - 2, QFont::DemiBold), look().theme->accent);
    }
    drawHeading(painter, box, {tr("How does %1 look%2?").arg(light_.id, when), light_.id + when});
}

}  // namespace tiepoint::ui
