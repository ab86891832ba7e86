#include "ui/cards/doctor_ask_card.h"

#include "ui/cards/hunt_cause_card.h"
#include "ui/cards/value_field.h"
#include "ui/theme/panels.h"
#include "ui/theme/qs.h"

#include <QPainter>

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr double kAskHead = 44, kSeenRow = 34, kAnswerRow = 38, kAskGap = 8;
constexpr double kTableWide = 118, kFieldWide = 150, kFieldHigh = 46, kPlaceWide = 110, kFootHigh = 26;
constexpr double kPlaceFigure = 36, kAskWords = 20;
constexpr double kAnswerShare = 0.36;  ///< of a row: the button; the rest says what it would leave
constexpr int kMostRows = 3;           ///< of more answers all but one stand in two columns

}  // namespace

DoctorAskCard::DoctorAskCard(QWidget* parent)
    : Card(parent),
      field_(new QLineEdit(this)),
      table_(new QLineEdit(this)),
      back_(new QToolButton(this)),
      fresh_(new QToolButton(this)) {
    setAccessibleName(tr("Seen and measured"));
    field_->setAccessibleName(tr("What the meter shows"));
    field_->setPlaceholderText(tr("volts"));
    field_->hide();
    table_->setAccessibleName(tr("Table"));
    table_->setPlaceholderText(tr("table 1"));
    table_->setToolTip(tr("Each table has a case of its own"));
    constexpr int kLongestTable = 24;
    table_->setMaxLength(kLongestTable);
    back_->setText(tr("Take back"));
    back_->setToolTip(tr("What was seen last counts no more"));
    fresh_->setText(tr("Start again"));
    fresh_->setToolTip(tr("Nothing was seen yet at this table"));
    connect(field_, &QLineEdit::returnPressed, this, [this] {
        const QString text = field_->text().trimmed();
        field_->clear();
        if (!text.isEmpty()) Q_EMIT typed(text);
    });
    connect(table_, &QLineEdit::editingFinished, this, [this] {
        if (table_->isModified()) Q_EMIT tableChosen(table_->text().trimmed());
        table_->setModified(false);
    });
    connect(back_, &QToolButton::clicked, this, &DoctorAskCard::backWanted);
    connect(fresh_, &QToolButton::clicked, this, &DoctorAskCard::freshWanted);
}

void DoctorAskCard::showSeen(std::vector<DoctorSeen> seen) {
    seen_ = std::move(seen);
    back_->setVisible(!seen_.empty());
    fresh_->setVisible(!seen_.empty());
    QStringList said;
    for (const DoctorSeen& each : seen_)
        said << (each.place + QLatin1Char(' ') + each.figure + QLatin1Char(' ') + each.words).trimmed();
    setToolTip(said.join(QLatin1Char('\n')));
    follow();
}

void DoctorAskCard::showAnswer(std::shared_ptr<const DoctorAnswer> answer) {
    answer_ = std::move(answer);
    makeAnswerButtons();
    setAccessibleDescription(answer_ ? qs(answer_->next) : QString());
    follow();
}

void DoctorAskCard::showPlace(const QString& hole, bool chosen) {
    if (hole == hole_ && chosen == chosen_) return;
    hole_ = hole;
    chosen_ = chosen;
    field_->setVisible(!hole.isEmpty());
    follow();
}

void DoctorAskCard::setTable(const QString& table) { table_->setText(table); }

void DoctorAskCard::setAnsweredBeside(bool beside) {
    beside_ = beside;
    follow();
}

void DoctorAskCard::follow() {
    for (QToolButton* button : answers_) button->setVisible(!beside_ && !chosen_);
    arrangeCard();
    update();
}

void DoctorAskCard::makeAnswerButtons() {
    for (QToolButton* button : answers_) {
        button->hide();
        button->deleteLater();  // one of them may be the sender
    }
    answers_.clear();
    if (!answer_) return;
    const auto count = static_cast<int>(answer_->choices.size());
    for (int choice = 0; choice < count; ++choice) {
        const DoctorAnswer::Choice& each = answer_->choices[static_cast<std::size_t>(choice)];
        auto* button = new QToolButton(this);
        button->setText(qs(each.words));
        button->setToolTip(each.means.empty() ? qs(each.words) : tr("%1: %2").arg(qs(each.words), qs(each.means)));
        connect(button, &QToolButton::clicked, this, [this, choice] { Q_EMIT answered(choice); });
        answers_.push_back(button);
    }
}

double DoctorAskCard::answersHigh() const {
    if (!answer_ || answers_.empty() || beside_ || chosen_) return 0;
    const auto count = static_cast<int>(answers_.size());
    return look().px(kAnswerRow) * (count <= kMostRows ? count : 1 + count / 2) + look().px(kAskGap);
}

QRectF DoctorAskCard::nextBox() const {
    const QRectF box = body();
    const double bottom = box.bottom() - look().px(kFootHigh) - answersHigh();
    // What was seen keeps two rows; a question takes what it needs of the rest, the end of a case all of it.
    const double rows = std::min<double>(2, static_cast<double>(seen_.size())) * look().px(kSeenRow);
    const double room = bottom - box.top() - look().px(kAskHead) - rows - look().px(kAskGap);
    const bool ends = answer_ && !answer_->question;
    const double wanted = look().px(ends ? 170 : hole_.isEmpty() ? 92 : 74);
    const double high = std::max(look().px(48), std::min(wanted, room)), out = look().px(9);
    return {box.left() - out, bottom - high, box.width() + 2 * out, high};
}

void DoctorAskCard::arrangeCard() {
    const QRectF box = body();
    const double head = look().px(34);
    table_->setStyleSheet(fieldStyle(look()));
    table_->setFont(look().font(text::kSmall));
    double right = box.right();
    for (QToolButton* button : {fresh_, back_}) {
        button->setStyleSheet(wordButtonStyle(look()));
        button->setFont(look().font(text::kSmall, QFont::DemiBold));
        const double wide = button->sizeHint().width();
        right -= wide;
        button->setGeometry(QRectF(right, box.top() - look().px(2), wide, head).toRect());
        right -= look().px(6);
    }
    table_->setGeometry(
        QRectF(right - look().px(kTableWide), box.top() - look().px(2), look().px(kTableWide), head).toRect());

    const QRectF next = nextBox();
    field_->setStyleSheet(fieldStyle(look()));
    field_->setFont(look().font(text::kBody, QFont::DemiBold));
    const double high = std::min(look().px(kFieldHigh), next.height() - look().px(8));
    field_->setGeometry(
        QRectF(next.left() + look().px(18 + kPlaceWide), next.center().y() - high / 2, look().px(kFieldWide), high)
            .toRect());

    // Few answers have a row each. Of many the one that leaves most has a row, the others stand in two columns: each leaves the thing itself.
    const auto count = static_cast<int>(answers_.size());
    const double top = next.bottom() + look().px(kAskGap), row = look().px(kAnswerRow), gap = 2 * look().px(kAskGap);
    const bool many = count > kMostRows;
    const int broad = broadAnswer();
    for (int i = 0, other = 0; i < count; ++i) {
        QToolButton* button = answers_[static_cast<std::size_t>(i)];
        QRectF room(box.left(), top + (many ? 0 : i) * row, kAnswerShare * box.width(), row - look().px(6));
        if (many && i != broad) {
            const double wide = (box.width() - gap) / 2;
            room = QRectF(box.left() + (other % 2) * (wide + gap), top + (1 + other / 2) * row, wide, room.height());
            ++other;
        }
        button->setStyleSheet(choiceButtonStyle(look()));
        button->setFont(fittingFont(button->text(), {look().font(text::kSmall, QFont::DemiBold), look().theme->text},
                                    QSizeF(room.width() - look().px(12), room.height())));
        button->setGeometry(room.toRect());
    }
}

/// The answer that leaves most.
int DoctorAskCard::broadAnswer() const {
    if (!answer_) return -1;
    const auto most =
        std::ranges::max_element(answer_->choices, {}, [](const auto& each) { return each.means.size(); });
    return static_cast<int>(most - answer_->choices.begin());
}

void DoctorAskCard::paintSeen(QPainter& painter, const QRectF& room) {
    const Theme& theme = *look().theme;
    const double row = look().px(kSeenRow);
    const auto count = static_cast<int>(seen_.size());
    const int fit = std::max(1, static_cast<int>(room.height() / row));
    const bool all = count <= fit;
    const int shown = all ? count : std::max(1, fit);
    for (int i = 0; i < shown; ++i) {
        const DoctorSeen& each = seen_[static_cast<std::size_t>(count - shown + i)];
        const double top = room.top() + i * row;
        if (each.place.isEmpty()) {
            drawLine(painter, QRectF(room.left(), top, room.width(), 0), each.words, look().font(text::kBody - 2),
                     theme.text);
            continue;
        }
        drawLine(painter, QRectF(room.left(), top - look().px(3), 0.2 * room.width(), 0), each.place,
                 look().font(text::kBody + 2, QFont::DemiBold), theme.text);
        drawFigure(painter, QRectF(room.left() + 0.2 * room.width(), top - look().px(3), 0.26 * room.width(), 0),
                   each.figure, text::kBody + 4, theme.text, Qt::AlignRight);
        drawLine(painter, QRectF(room.left() + 0.5 * room.width(), top, 0.5 * room.width(), 0), each.words,
                 look().font(text::kSmall + 1), theme.dimText);
    }
}

void DoctorAskCard::paintNext(QPainter& painter, const QRectF& box) {
    const Theme& theme = *look().theme;
    const bool working = !answer_;
    const bool plain = working || (beside_ && !chosen_);  // the frame stands about the pictures then
    painter.setPen(QPen(plain ? theme.cardEdge : theme.accent, look().px(plain ? 1 : 2)));
    painter.setBrush(plain ? theme.card : mix(theme.card, theme.accent, 0.08));
    painter.drawRoundedRect(box, look().px(7), look().px(7));
    QRectF words = box.adjusted(look().px(16), look().px(8), -look().px(14), -look().px(8));
    if (!hole_.isEmpty()) {
        drawLine(painter,
                 QRectF(words.left(), box.center().y() - look().px(22), look().px(kPlaceWide - 8), look().px(44)),
                 hole_, look().font(kPlaceFigure, QFont::DemiBold), theme.accent);
        words.setLeft(field_->geometry().right() + look().px(16));
    }
    QString said = working   ? tr("One moment…")
                   : chosen_ ? tr("Type what the meter shows here, and press Enter.")
                   : beside_ ? tr("Look at the light, and choose the picture at the left.")
                             : qs(answer_->next);
    if (answer_ && answer_->isFound() && !chosen_) said = tr("The mend: %1").arg(said);
    drawBlock(painter, words, said, look().font(kAskWords + 1, QFont::DemiBold), working ? theme.dimText : theme.text,
              Qt::AlignLeft | Qt::AlignVCenter);
}

void DoctorAskCard::paintBody(QPainter& painter) {
    const QRectF box = body(), next = nextBox();
    const Theme& theme = *look().theme;
    drawHeading(painter, QRectF(box.left(), box.top(), table_->x() - box.left() - look().px(8), 0),
                {tr("Seen and measured"), tr("Seen")});
    const double top = box.top() + look().px(kAskHead);
    const QRectF room(box.left(), top, box.width(), next.top() - top);
    if (!seen_.empty()) {
        paintSeen(painter, room);
    } else if (room.height() >= look().px(kSeenRow)) {
        drawLine(painter, room, tr("Nothing yet."), look().font(text::kSmall + 1), theme.dimText);
    }
    paintNext(painter, next);
    const bool many = static_cast<int>(answers_.size()) > kMostRows;
    for (std::size_t i = 0; i < answers_.size() && !beside_ && !chosen_; ++i) {
        if (many && static_cast<int>(i) != broadAnswer()) continue;
        const QRect button = answers_[i]->geometry();
        const QFont font = look().font(text::kSmall);
        const double left = button.right() + look().px(12);
        drawLine(painter, QRectF(left, button.center().y() - QFontMetricsF(font).height() / 2, box.right() - left, 0),
                 qs(answer_->choices[i].means), font, theme.dimText);
    }
    drawLine(painter, QRectF(box.left(), box.bottom() - look().px(kFootHigh - 6), box.width(), 0),
             tr("Measured elsewhere? Click the hole. Black tip in minus."), look().font(text::kSmall - 1),
             theme.dimText);
}

}  // namespace tiepoint::ui
