#include "ui/cards/truth_card.h"

#include "ui/cards/value_field.h"
#include "ui/theme/panels.h"
#include "ui/theme/qs.h"

#include <QPainter>
#include <QScrollBar>

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr double kRowsShare = 0.62;  // of the card, at most, for the rows
constexpr double kWordsGap = 24;     // between the rows and the words
constexpr double kHeadGap = 4;

/// What is said of one lamp.
QString lampSentence(const TableAnswer& answer, std::size_t lamp) {
    const TruthTable& table = *answer.table;
    const QString id = qs(answer.bench->parts[table.lamps[lamp]].id);
    if (table.logic[lamp]) {
        const Expression& logic = table.logic[lamp]->expression;
        const QString words = qs(logic.inWords(table.switchNames()));
        return logic.isConstant() ? QStringLiteral("%1 is %2 lit").arg(id, words)
                                  : QStringLiteral("%1 = %2").arg(id, words);
    }
    const auto several =
        std::ranges::find_if(table.switches, [](const TruthSwitch& column) { return column.positions.size() > 2; });
    if (several == table.switches.end()) return QStringLiteral("%1: no row has a solution").arg(id);
    return QStringLiteral("%1: no expression, since %2 has %3 positions")
        .arg(id, qs(several->name))
        .arg(several->positions.size());
}

/// What the table says in words.
QStringList sentencesOf(const TableAnswer& answer) {
    if (!answer.table.ok())
        return {QStringLiteral("No table: ") + qs(answer.table.error().message) + QStringLiteral(".")};
    const TruthTable& table = *answer.table;
    QStringList sentences;
    if (table.lamps.empty()) sentences << QStringLiteral("No lamp on this bench.");
    for (std::size_t lamp = 0; lamp < table.lamps.size(); ++lamp) sentences << lampSentence(answer, lamp);
    for (const int index : table.idle)
        sentences << QStringLiteral("%1 changes nothing").arg(qs(table.switches[index].name));
    return sentences;
}

/// What the figures of the switches mean: "1: S1, S2 pressed; S3 towards b".
QString meaningOf(const TruthTable& table) {
    std::vector<std::pair<std::string, QStringList>> byPosition;
    QStringList parts;
    for (const TruthSwitch& column : table.switches) {
        if (column.positions.size() > 2) {
            QStringList each;
            for (std::size_t digit = 0; digit < column.positions.size(); ++digit)
                each << QStringLiteral("%1 %2").arg(digit).arg(qs(column.positions[digit]));
            parts << QStringLiteral("%1: %2").arg(qs(column.name), each.join(QStringLiteral(", ")));
            continue;
        }
        const std::string& position = column.positions[1];
        auto known = std::ranges::find(byPosition, position, &std::pair<std::string, QStringList>::first);
        if (known == byPosition.end()) known = byPosition.insert(known, {position, {}});
        known->second << qs(column.name);
    }
    QStringList ones;
    for (const auto& [position, names] : byPosition)
        ones << names.join(QStringLiteral(", ")) + QLatin1Char(' ') + qs(position);
    if (!ones.isEmpty()) parts.prepend(QStringLiteral("1: ") + ones.join(QStringLiteral("; ")));
    return parts.join(QStringLiteral("; "));
}

}  // namespace

TruthCard::TruthCard(QWidget* parent)
    : AsideCard(parent),
      rows_(new TruthRows(this)),
      area_(new QScrollArea(this)),
      words_(new QLabel) {
    setAccessibleName(QStringLiteral("Truth table"));
    setFocusProxy(rows_);
    scrollWords(*area_, *words_);
    area_->setAccessibleName(QStringLiteral("When each lamp is lit"));
    connect(rows_, &TruthRows::rowChosen, this, &TruthCard::rowChosen);
}

void TruthCard::showTable(std::shared_ptr<const TableAnswer> answer) {
    stale_ = false;
    sentences_ = sentencesOf(*answer);
    meaning_ = answer->table.ok() ? meaningOf(*answer->table) : QString();
    const QString said = sentences_.join(QStringLiteral(". "));
    if (said != accessibleDescription()) area_->verticalScrollBar()->setValue(0);
    setAccessibleDescription(said);
    rows_->showTable(std::move(answer));
    arrangeCard();
    update();
}

void TruthCard::showStale() {
    stale_ = true;
    rows_->setStale(true);
    words_->setText(wordsInColour());
    update();
}

QString TruthCard::wordsInColour() const {
    const Theme& theme = *look().theme;
    QString words;
    const auto paragraph = [&](const QString& text, const QColor& colour, int pixels, bool bold) {
        words += QStringLiteral("<p style='margin:0 0 3px 0; color:%1; font-size:%2px; font-weight:%3'>%4</p>")
                     .arg(colour.name())
                     .arg(pixels)
                     .arg(bold ? 600 : 400)
                     .arg(text.toHtmlEscaped());
    };
    for (const QString& sentence : sentences_) {
        paragraph(sentence, stale_ ? theme.dimText : theme.text, look().ipx(text::kLabel),
                  sentence.contains(QLatin1Char('=')));
    }
    if (!meaning_.isEmpty()) paragraph(meaning_, theme.dimText, look().ipx(text::kSmall), false);
    return words;
}

void TruthCard::arrangeCard() {
    AsideCard::arrangeCard();
    rows_->setLook(look());
    words_->setFont(look().font(text::kLabel));
    area_->setStyleSheet(fieldStyle(look()) + QStringLiteral("QScrollArea { background: transparent; }"));
    words_->setText(wordsInColour());
    const QRectF box = body();
    rows_->setVisible(table() != nullptr);
    double left = box.left();
    if (table()) {
        const double width = std::min(rows_->wantedSize().width(), kRowsShare * box.width());
        rows_->setGeometry(QRectF(left, box.top() - look().px(2), width, box.height() + look().px(6)).toRect());
        left += width + look().px(kWordsGap);
    }
    const double head = QFontMetricsF(look().font(text::kBody)).height() + look().px(kHeadGap);
    area_->setGeometry(QRectF(left, box.top() + head, box.right() - left, box.height() - head).toRect());
    settleWords(*area_, *words_);
}

double TruthCard::roomHeight(double most) const {
    const double around = height() - body().height();
    return std::min(most, rows_->wantedSize().height() + around);
}

void TruthCard::paintBody(QPainter& painter) {
    const double left = area_->x();
    drawLine(painter, QRectF(left, body().top(), body().left() + widthBesideButton() - left, 0),
             QStringLiteral("Truth table"), look().font(text::kBody), look().theme->dimText);
}

}  // namespace tiepoint::ui
