#include "ui/cards/answer_card.h"

#include "ui/cards/value_field.h"
#include "ui/theme/qs.h"

#include <QPainter>
#include <QScrollBar>

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr double kWordSize = 21;
constexpr double kButtonHeight = 36;

}  // namespace

AnswerCard::AnswerCard(QWidget* parent) : AsideCard(parent), area_(new QScrollArea(this)), words_(new QLabel) {
    setAccessibleName(QStringLiteral("Why"));
    scrollWords(*area_, *words_);
}

void AnswerCard::showAnswer(std::shared_ptr<const WhyAnswer> answer) {
    const bool another = !shown_ || shown_->answer.part != answer->answer.part;
    shown_ = std::move(answer);
    stale_ = false;
    QStringList spoken{qs(shown_->answer.question)};
    for (const Cause& cause : shown_->answer.chain) spoken << qs(cause.text);
    setAccessibleDescription(spoken.join(QLatin1Char(' ')));
    makeButtons();
    arrangeCard();
    if (another) area_->verticalScrollBar()->setValue(0);
    update();
}

void AnswerCard::showStale() {
    if (stale_) return;
    stale_ = true;
    words_->setText({});
    for (QToolButton* button : buttons_) button->setEnabled(false);
    update();
}

void AnswerCard::makeButtons() {
    for (QToolButton* button : buttons_) button->deleteLater();  // one of them may be the sender
    buttons_.clear();
    for (const Remedy& remedy : shown_->answer.remedies) {
        auto* button = new QToolButton(this);
        button->setText(qs(remedy.text));
        button->setToolTip(QStringLiteral("%1. Then %2.").arg(qs(remedy.text), qs(remedy.outcome)));
        connect(button, &QToolButton::clicked, this, [this, remedy] { Q_EMIT remedyChosen(remedy); });
        button->show();
        buttons_.push_back(button);
    }
}

QString AnswerCard::wordsInColour() const {
    QString words;
    const auto paragraph = [&](const QString& inside) {
        words += QStringLiteral("<p style='margin:0 0 4px 0'>%1</p>").arg(inside);
    };
    // The missing link first: on a small card the rest is scrolled to.
    for (const Cause& cause : shown_->answer.chain) {
        if (cause.missingLink) paragraph(QStringLiteral("<b>Missing link:</b> ") + qs(cause.text).toHtmlEscaped());
    }
    for (const Cause& cause : shown_->answer.chain) {
        if (!cause.missingLink) paragraph(qs(cause.text).toHtmlEscaped());
    }
    for (const Remedy& remedy : shown_->answer.remedies) {
        paragraph(QStringLiteral("<b>%1:</b> then %2.")
                      .arg(qs(remedy.text).toHtmlEscaped(), qs(remedy.outcome).toHtmlEscaped()));
    }
    return words;
}

void AnswerCard::arrangeCard() {
    AsideCard::arrangeCard();
    const QRectF box = body();
    const QFont font = look().font(kWordSize);
    words_->setFont(font);
    area_->setStyleSheet(fieldStyle(look()) +
                         QStringLiteral("QLabel { color: %1; } QScrollArea { background: transparent; }")
                             .arg(look().theme->text.name()));
    if (shown_ && !stale_) words_->setText(wordsInColour());
    const double buttonHeight = arrangeButtons();
    const double top = box.top() + QFontMetricsF(look().font(text::kBody, QFont::DemiBold)).height() + look().px(4);
    area_->setGeometry(QRectF(box.left(), top, box.width(), box.bottom() - buttonHeight - top).toRect());
    settleWords(*area_, *words_);
}

/// Along the lower edge, in as many rows as they need; returns how high they stand.
double AnswerCard::arrangeButtons() {
    if (buttons_.empty()) return 0;
    const QRectF box = body();
    const double high = look().px(kButtonHeight), gap = look().px(14), side = look().px(4);
    const double from = box.left() - side, room = box.width() + 2 * side;
    std::vector<QPointF> places;
    double left = from, row = 0;
    for (QToolButton* button : buttons_) {
        button->setStyleSheet(wordButtonStyle(look()));
        // Its sentence stands above it too; a long one is set smaller here.
        const WordStyle style{look().font(text::kLabel, QFont::DemiBold), look().theme->accent};
        QFont font = fittingFont(button->text(), style, QSizeF(room - 4 * side, high));
        font.setWeight(QFont::Normal);
        button->setFont(font);
        const double width = std::min<double>(button->sizeHint().width(), room);
        if (left > from && left + width > from + room) {
            left = from;
            row += 1;
        }
        button->resize(QSizeF(width, high).toSize());
        places.emplace_back(left, row * high);
        left += width + gap;
    }
    const double all = (row + 1) * high;
    for (std::size_t i = 0; i < buttons_.size(); ++i)
        buttons_[i]->move((places[i] + QPointF(0, box.bottom() - all)).toPoint());
    return all;
}

void AnswerCard::paintBody(QPainter& painter) {
    if (!shown_) return;
    const QRectF box = body();
    drawLine(painter, QRectF(box.left(), box.top(), widthBesideButton(), 0), qs(shown_->answer.question),
             look().font(text::kBody, QFont::DemiBold), stale_ ? look().theme->dimText : look().theme->text);
}

}  // namespace tiepoint::ui
