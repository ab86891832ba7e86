#include "ui/cards/hunt_proof_card.h"

#include "ui/cards/hunt_cause_card.h"
#include "ui/theme/panels.h"

#include <QPainter>

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr double kProofHead = 40, kProofHigh = 58, kProofGap = 10, kHintLine = 30;
constexpr int kProofColumns = 2;
constexpr std::size_t kMostProofs = 4;  ///< buttons; the newest readings

}  // namespace

HuntProofCard::HuntProofCard(QWidget* parent) : Card(parent), more_(new QToolButton(this)) {
    setAccessibleName(QStringLiteral("How do you know?"));
    more_->setText(QStringLiteral("one more hint"));
    connect(more_, &QToolButton::clicked, this, &HuntProofCard::hintWanted);
}

void HuntProofCard::showReadings(std::vector<HuntRow> rows) {
    std::erase_if(rows, [](const HuntRow& row) { return !row.usable; });
    // What is chosen stays; of the others the newest.
    while (rows.size() > kMostProofs) {
        const auto oldest = std::ranges::find(rows, false, &HuntRow::chosen);
        rows.erase(oldest == rows.end() ? rows.begin() : oldest);
    }
    const bool same = std::ranges::equal(rows, rows_, {}, &HuntRow::id, &HuntRow::id);
    rows_ = std::move(rows);
    if (!same) {
        for (QToolButton* button : buttons_) button->deleteLater();
        buttons_.clear();
        for (const HuntRow& row : rows_) {
            auto* button = new QToolButton(this);
            button->setCheckable(true);
            connect(button, &QToolButton::clicked, this, [this, id = row.id](bool on) { Q_EMIT chosen(id, on); });
            button->show();
            buttons_.push_back(button);
        }
    }
    for (std::size_t i = 0; i < rows_.size(); ++i) {
        const HuntRow& row = rows_[i];
        QString words = QStringLiteral("%1   %2  %3").arg(row.number).arg(row.place, row.shown);
        const QString second = row.where.isEmpty() ? row.when : row.where;
        if (!second.isEmpty()) words += QLatin1Char('\n') + second;
        buttons_[i]->setText(words);
        buttons_[i]->setChecked(row.chosen);
    }
    arrangeCard();
    update();
}

void HuntProofCard::showHints(const QStringList& open, int all) {
    hints_ = open;
    allHints_ = all;
    more_->setVisible(static_cast<int>(open.size()) < all);
    setAccessibleDescription(open.join(QLatin1Char(' ')));
    arrangeCard();
    update();
}

QToolButton* HuntProofCard::readingButton(int number) const {
    const auto found = std::ranges::find(rows_, number, &HuntRow::number);
    return found == rows_.end() ? nullptr : buttons_[static_cast<std::size_t>(found - rows_.begin())];
}

void HuntProofCard::arrangeCard() {
    const QRectF box = body();
    const double gap = look().px(kProofGap), wide = (box.width() - gap) / kProofColumns;
    const double hints = look().px((allHints_ + 0.5) * kHintLine), top = box.top() + look().px(kProofHead);
    const double rows = 2, high = std::min(look().px(kProofHigh), (box.bottom() - hints - top) / rows - gap);
    for (std::size_t i = 0; i < buttons_.size(); ++i) {
        const auto column = static_cast<double>(i % kProofColumns), row = static_cast<double>(i / kProofColumns);
        buttons_[i]->setStyleSheet(choiceButtonStyle(look()));
        buttons_[i]->setFont(look().font(text::kSmall - 1, QFont::DemiBold));
        buttons_[i]->setGeometry(
            QRectF(box.left() + column * (wide + gap), top + row * (high + gap), wide, high).toRect());
    }
    more_->setStyleSheet(wordButtonStyle(look()));
    more_->setFont(look().font(text::kSmall));
    const double at = box.bottom() - look().px((allHints_ - static_cast<double>(hints_.size())) * kHintLine);
    more_->setGeometry(
        QRectF(box.left() + look().px(40), at, more_->sizeHint().width(), look().px(kHintLine)).toRect());
}

void HuntProofCard::paintBody(QPainter& painter) {
    const QRectF box = body();
    const Theme& theme = *look().theme;
    drawHeading(painter, box, {QStringLiteral("How do you know?")});
    if (rows_.empty()) {
        drawLine(painter, QRectF(box.left(), box.top() + look().px(kProofHead), box.width(), 0),
                 QStringLiteral("Measure first: readings are the proof."), look().font(text::kSmall), theme.dimText);
    }
    const double top = box.bottom() - look().px(allHints_ * kHintLine);
    painter.setPen(QPen(theme.cardEdge, look().px(1)));
    painter.drawLine(QPointF(box.left(), top - look().px(8)), QPointF(box.right(), top - look().px(8)));
    for (int hint = 0; hint < allHints_; ++hint) {
        const double y = top + hint * look().px(kHintLine);
        const bool open = hint < static_cast<int>(hints_.size());
        painter.setPen(QPen(open ? theme.accent : theme.dimText, look().px(1)));
        painter.setBrush(open ? mix(theme.card, theme.accent, 0.35) : theme.card);
        painter.drawRoundedRect(QRectF(box.left(), y + look().px(8), look().px(28), look().px(14)), look().px(2),
                                look().px(2));
        if (open)
            drawLine(painter, QRectF(box.left() + look().px(40), y, box.width() - look().px(40), 0), hints_[hint],
                     look().font(text::kSmall), theme.text);
    }
}

}  // namespace tiepoint::ui
