#include "ui/cards/doctor_card.h"

#include "ui/cards/value_field.h"
#include "ui/theme/qs.h"

#include <QPainter>

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr double kDoctorWords = 18, kDoctorQuestion = 22, kDoctorKeyHeight = 30, kDoctorFieldHeight = 32;
constexpr double kDoctorGap = 10, kDoctorTableWidth = 130;
constexpr double kSeenShare = 0.27, kQuestionShare = 0.38;  ///< of the card's width; the causes have the rest

QString paragraphOf(const QString& inside) { return QStringLiteral("<p style='margin:0 0 3px 0'>%1</p>").arg(inside); }

}  // namespace

DoctorCard::DoctorCard(QWidget* parent)
    : AsideCard(parent),
      seenArea_(new QScrollArea(this)),
      causesArea_(new QScrollArea(this)),
      seenWords_(new QLabel),
      causesWords_(new QLabel),
      field_(new QLineEdit(this)),
      table_(new QLineEdit(this)),
      back_(makeKey(tr("Take back"), tr("What was seen last counts no more"))),
      fresh_(makeKey(tr("Start again"), tr("Nothing was seen yet at this table"))) {
    setAccessibleName(tr("Help with a real board"));
    scrollWords(*seenArea_, *seenWords_);
    scrollWords(*causesArea_, *causesWords_);
    seenWords_->setAccessibleName(tr("Seen so far"));
    causesWords_->setAccessibleName(tr("Still possible"));
    field_->setAccessibleName(tr("What was measured"));
    table_->setAccessibleName(tr("Table"));
    table_->setPlaceholderText(tr("table 1"));
    const QStringList looks{tr("dark"), tr("dim"), tr("lit"), tr("always lit"), tr("hot")};
    const QStringList tips{tr("It doesn't shine"), tr("It shines, and clearly less than planned"), tr("It shines"),
                           tr("It shines in every position of the switches"),
                           tr("Too hot to touch, or it smells: switch the supply off now")};
    for (int kind = 0; kind < looks.size(); ++kind) {
        lights_.push_back(makeKey(looks[kind], tips[kind]));
        lights_.back()->hide();  // until there is a light
        connect(lights_.back(), &QToolButton::clicked, this, [this, kind] { Q_EMIT lightSeen(kind); });
    }
    connect(field_, &QLineEdit::returnPressed, this, [this] {
        const QString text = field_->text().trimmed();
        field_->clear();
        if (!text.isEmpty()) Q_EMIT typed(text);
    });
    connect(table_, &QLineEdit::editingFinished, this, [this] {
        if (table_->isModified()) Q_EMIT tableChosen(table_->text().trimmed());
        table_->setModified(false);
    });
    connect(back_, &QToolButton::clicked, this, &DoctorCard::backWanted);
    connect(fresh_, &QToolButton::clicked, this, &DoctorCard::freshWanted);
}

QToolButton* DoctorCard::makeKey(const QString& text, const QString& tip) {
    auto* key = new QToolButton(this);
    key->setText(text);
    key->setToolTip(tip);
    return key;
}

void DoctorCard::showAnswer(std::shared_ptr<const DoctorAnswer> answer) {
    answer_ = std::move(answer);
    makeAnswerKeys();
    setAccessibleDescription(answer_ ? qs(answer_->next) : QString());
    arrangeCard();
    update();
}

void DoctorCard::showSeen(const QStringList& seen) {
    seen_ = seen;
    back_->setEnabled(!seen.isEmpty());
    fresh_->setEnabled(!seen.isEmpty());
    arrangeCard();
}

void DoctorCard::setFieldHint(const QString& hint) { field_->setPlaceholderText(hint); }
void DoctorCard::setTable(const QString& table) { table_->setText(table); }

void DoctorCard::setLight(const QString& light) {
    if (light_ == light) return;
    light_ = light;
    for (QToolButton* key : lights_) key->setVisible(!light.isEmpty());
    arrangeCard();
    update();
}

void DoctorCard::makeAnswerKeys() {
    for (QToolButton* key : answers_) key->deleteLater();  // one of them may be the sender
    answers_.clear();
    if (!answer_) return;
    for (int choice = 0; choice < static_cast<int>(answer_->choices.size()); ++choice) {
        const DoctorAnswer::Choice& each = answer_->choices[static_cast<std::size_t>(choice)];
        answers_.push_back(makeKey(
            qs(each.words), each.means.empty() ? qs(each.words) : tr("%1: %2").arg(qs(each.words), qs(each.means))));
        connect(answers_.back(), &QToolButton::clicked, this, [this, choice] { Q_EMIT answered(choice); });
        answers_.back()->show();
    }
}

QString DoctorCard::seenInColour() const {
    QString words;
    for (const QString& each : seen_) words += paragraphOf(each.toHtmlEscaped());
    return words.isEmpty() ? paragraphOf(tr("Nothing yet.")) : words;
}

QString DoctorCard::causesInColour() const {
    QString words;
    if (!answer_) return words;
    for (const DoctorAnswer::Cause& cause : answer_->fits)
        words += paragraphOf(QStringLiteral("<b>\u25cb %1</b>").arg(qs(cause.text).toHtmlEscaped()));
    if (answer_->fitCount > answer_->fits.size())
        words += paragraphOf(tr("and %1 more").arg(answer_->fitCount - answer_->fits.size()));
    const QString dim = look().theme->dimText.name();
    for (const DoctorAnswer::Struck& each : answer_->ruledOut)
        words += paragraphOf(QStringLiteral("<span style='color:%1'>%2: <s>%3</s></span>")
                                 .arg(dim, qs(each.by).toHtmlEscaped(), qs(each.text).toHtmlEscaped()));
    return words;
}

double DoctorCard::placeKeys(const std::vector<QToolButton*>& keys, const QRectF& room) {
    const double high = look().px(kDoctorKeyHeight), gap = look().px(kDoctorGap);
    double left = room.left(), row = 0;
    for (QToolButton* key : keys) {
        key->setStyleSheet(wordKeyStyle(look()));
        key->setFont(look().font(kDoctorWords, QFont::DemiBold));
        const double width = std::min<double>(key->sizeHint().width(), room.width());
        if (left > room.left() && left + width > room.right()) {
            left = room.left();
            row += 1;
        }
        key->setGeometry(QRectF(left, room.top() + row * high, width, high).toRect());
        left += width + gap;
    }
    return keys.empty() ? 0 : (row + 1) * high;
}

void DoctorCard::arrangeCard() {
    AsideCard::arrangeCard();
    const QRectF box = body();
    const double heading = QFontMetricsF(look().font(text::kBody)).height() + look().px(4);
    const double gap = look().px(2 * kDoctorGap), keys = look().px(kDoctorKeyHeight);
    const QString style =
        fieldStyle(look()) +
        QStringLiteral("QLabel { color: %1; } QScrollArea { background: transparent; }").arg(look().theme->text.name());
    const QRectF seen(box.left(), box.top() + heading, kSeenShare * box.width(), box.height() - heading);
    const QRectF asked(seen.right() + gap, box.top(), kQuestionShare * box.width(), box.height());
    const QRectF causes(asked.right() + gap, box.top() + heading, box.right() - asked.right() - gap,
                        box.height() - heading);

    table_->setStyleSheet(fieldStyle(look()));
    table_->setFont(look().font(kDoctorWords));
    const double tableWidth = look().px(kDoctorTableWidth), fieldHeight = look().px(kDoctorFieldHeight);
    table_->setGeometry(QRectF(seen.right() - tableWidth, box.top() - look().px(4), tableWidth, fieldHeight).toRect());
    const double lightsHigh =
        light_.isEmpty()
            ? 0
            : placeKeys(lights_, QRectF(seen.left(), seen.top() + look().px(24), seen.width(), keys)) + look().px(24);
    seenWords_->setFont(look().font(kDoctorWords));
    seenWords_->setText(seenInColour());
    seenArea_->setStyleSheet(style);
    seenArea_->setGeometry(
        QRectF(seen.left(), seen.top() + lightsHigh, seen.width(), seen.height() - lightsHigh - keys).toRect());
    settleWords(*seenArea_, *seenWords_);
    placeKeys({back_, fresh_}, QRectF(seen.left(), seen.bottom() - keys, seen.width(), keys));

    const double answersTop = asked.bottom() - fieldHeight - look().px(kDoctorGap);
    double answersHigh = placeKeys(answers_, QRectF(asked.left(), asked.top(), asked.width(), keys));
    for (QToolButton* key : answers_) key->move(key->x(), key->y() + qRound(answersTop - answersHigh - asked.top()));
    field_->setStyleSheet(fieldStyle(look()));
    field_->setFont(look().font(kDoctorWords));
    field_->setGeometry(QRectF(asked.left(), asked.bottom() - fieldHeight, asked.width(), fieldHeight).toRect());

    causesWords_->setFont(look().font(kDoctorWords));
    causesWords_->setText(causesInColour());
    causesArea_->setStyleSheet(style);
    causesArea_->setGeometry(causes.toRect());
    settleWords(*causesArea_, *causesWords_);
}

void DoctorCard::paintBody(QPainter& painter) {
    const QRectF box = body();
    const double gap = look().px(2 * kDoctorGap);
    const double seenWidth = kSeenShare * box.width(), askedWidth = kQuestionShare * box.width();
    drawHeading(painter, QRectF(box.left(), box.top(), seenWidth - look().px(kDoctorTableWidth + kDoctorGap), 0),
                {tr("Seen at"), tr("Seen")});
    if (!light_.isEmpty()) {
        const double heading = QFontMetricsF(look().font(text::kBody)).height() + look().px(4);
        drawLine(painter, QRectF(box.left(), box.top() + heading, seenWidth, 0), light_, look().font(kDoctorWords),
                 look().theme->dimText);
    }
    const double left = box.left() + seenWidth + gap;
    const double answersTop = answers_.empty() ? field_->y() - look().px(kDoctorGap) : answers_.front()->y();
    const QString next = answer_ ? qs(answer_->next) : tr("One moment…");
    drawBlock(painter, QRectF(left, box.top(), askedWidth, answersTop - box.top()), next,
              look().font(kDoctorQuestion, QFont::DemiBold), answer_ ? look().theme->accent : look().theme->dimText);
    if (!answer_) return;
    const QString counted = answer_->pairs ? tr("Two slips at once: %1").arg(answer_->fitCount)
                                           : tr("%1 of %2").arg(answer_->fitCount).arg(answer_->allCount);
    const double right = left + askedWidth + gap;
    drawHeading(painter, QRectF(right, box.top(), box.left() + widthBesideKey() - right, 0),
                {tr("Still possible: %1").arg(counted), counted});
}

}  // namespace tiepoint::ui
