#include "ui/cards/spread_card.h"

#include "core/base/quantity.h"
#include "ui/theme/qs.h"

#include <QKeyEvent>
#include <QPainter>
#include <QWheelEvent>

#include <algorithm>
#include <cmath>

namespace tiepoint::ui {
namespace {

constexpr double kSpreadRow = 40, kSpreadHead = 36, kSpreadFoot = 32;
constexpr double kSpreadWords = 20;
constexpr int kCellChoices[] = {2, 3, 4};

QString figureWords(const SpreadReading& reading, double value) { return qs(formatQuantity(value, reading.unit)); }

QString mostWords(const SpreadReading& reading) {
    if (std::isnan(reading.nominal)) return QStringLiteral("joined to nothing");
    if (reading.most.empty()) return QStringLiteral("the same throughout");
    return QStringLiteral("most by %1").arg(qs(reading.most));
}

std::vector<BatteryChoice> batteryChoices() {
    std::vector<BatteryChoice> choices{{}};
    for (const PartKind* kind : batteryKinds()) {
        const bool counts = std::ranges::any_of(kind->values, &ValueSpec::integer);
        if (!counts) choices.push_back({kind, 0});
        for (const int count : kCellChoices)
            if (counts) choices.push_back({kind, count});
    }
    return choices;
}

QString choiceWords(const BatteryChoice& choice) {
    if (!choice.kind) return QStringLiteral("Try a battery");
    const QString label = qs(choice.kind->label);
    return choice.count > 0 ? QStringLiteral("On %1 %2").arg(choice.count).arg(label)
                            : QStringLiteral("On a %1").arg(label);
}

}  // namespace

SpreadCard::SpreadCard(QWidget* parent)
    : AsideCard(parent),
      choices_(batteryChoices()),
      battery_(new QToolButton(this)) {
    setAccessibleName(QStringLiteral("Spread and life"));
    setFocusPolicy(Qt::StrongFocus);
    battery_->setToolTip(QStringLiteral("Another battery in place of the first supply"));
    connect(battery_, &QToolButton::clicked, this, [this] {
        choice_ = (choice_ + 1) % static_cast<int>(choices_.size());
        followBattery();
        Q_EMIT batteryChosen();
    });
    followBattery();
}

void SpreadCard::followBattery() {
    battery_->setText(choiceWords(chosenBattery()));
    arrangeCard();
}

void SpreadCard::showAnswer(std::shared_ptr<const SpreadAnswer> answer) {
    answer_ = std::move(answer);
    stale_ = false;
    scrollTo(first_);
    setAccessibleDescription(spoken());
    update();
}

void SpreadCard::showStale() {
    stale_ = true;
    update();
}

QString SpreadCard::lifeWords() const {
    if (!spread() || !answer_->life) return {};
    const BatteryLife& life = *answer_->life;
    if (!life.why.empty()) return qs(life.why);
    const QString kind = qs(life.kind);
    if (life.moments.empty()) return QStringLiteral("%1: empty").arg(kind);
    QString words = QStringLiteral("%1: lasts %2").arg(kind, qs(lifeInWords(life.hours)));
    if (!life.darkFirst.empty())
        words += QStringLiteral("; %1 goes dark after %2").arg(qs(life.darkFirst), qs(lifeInWords(life.darkHours)));
    return words;
}

QString SpreadCard::spoken() const {
    if (!spread()) return {};
    if (!spread()->why.empty()) return qs(spread()->why);
    QStringList said;
    for (const SpreadReading& reading : spread()->readings) {
        said << QStringLiteral("%1: %2, from %3 to %4, %5")
                    .arg(qs(reading.name), figureWords(reading, reading.nominal), figureWords(reading, reading.least),
                         figureWords(reading, reading.greatest), mostWords(reading));
    }
    if (const QString life = lifeWords(); !life.isEmpty()) said << life;
    return said.join(QStringLiteral(". "));
}

int SpreadCard::wholeRows() const {
    const double room = body().height() - look().px(kSpreadHead + kSpreadFoot);
    return std::max(1, static_cast<int>(room / look().px(kSpreadRow)));
}

void SpreadCard::scrollTo(int first) {
    first_ = std::clamp(first, 0, std::max(0, rowCount() - wholeRows()));
    update();
}

void SpreadCard::wheelEvent(QWheelEvent* event) {
    scrollTo(first_ + (event->angleDelta().y() < 0 ? 1 : -1));
    event->accept();
}

void SpreadCard::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Down) return scrollTo(first_ + 1);
    if (event->key() == Qt::Key_Up) return scrollTo(first_ - 1);
    AsideCard::keyPressEvent(event);
}

void SpreadCard::arrangeCard() {
    AsideCard::arrangeCard();
    const QRectF box = body();
    battery_->setStyleSheet(wordButtonStyle(look()));
    battery_->setFont(look().font(kSpreadWords));
    const double wide = std::min<double>(battery_->sizeHint().width(), box.width() / 2);
    battery_->setGeometry(
        QRectF(box.right() - wide, box.bottom() - look().px(kSpreadFoot), wide, look().px(kSpreadFoot)).toRect());
    scrollTo(first_);
}

QRectF SpreadCard::rowBox(int row) const {
    const QRectF box = body();
    return {box.left(), box.top() + look().px(kSpreadHead) + (row - first_) * look().px(kSpreadRow), box.width(),
            look().px(kSpreadRow)};
}

void SpreadCard::paintHistogram(QPainter& painter, const QRectF& box, const SpreadReading& reading) const {
    if (reading.histogram.empty()) return;
    const int most = *std::ranges::max_element(reading.histogram);
    const double wide = box.width() / static_cast<double>(reading.histogram.size());
    painter.setPen(Qt::NoPen);
    painter.setBrush(mix(look().theme->card, look().theme->accent, 0.55));
    for (std::size_t bar = 0; bar < reading.histogram.size(); ++bar) {
        const double high = box.height() * reading.histogram[bar] / most;
        painter.drawRect(QRectF(box.left() + static_cast<double>(bar) * wide, box.bottom() - high,
                                std::max(1.0, wide - look().px(1)), high));
    }
    const double at = (reading.nominal - reading.least) / (reading.greatest - reading.least);
    painter.setBrush(look().theme->text);
    painter.drawRect(QRectF(box.left() + std::clamp(at, 0.0, 1.0) * box.width() - look().px(1), box.top(), look().px(2),
                            box.height()));
    painter.setBrush(look().theme->dimText);
    painter.drawRect(QRectF(box.left(), box.bottom(), box.width(), look().px(1)));
}

void SpreadCard::paintRow(QPainter& painter, const QRectF& box, const SpreadReading& reading) const {
    // Name, nominal figure, least, histogram, greatest, what matters most.
    constexpr double kShares[] = {0.13, 0.15, 0.15, 0.22, 0.15, 0.20};
    const QFont words = look().font(kSpreadWords), bold = look().font(kSpreadWords, QFont::DemiBold);
    const Theme& theme = *look().theme;
    std::vector<QRectF> cells;
    double left = box.left();
    for (const double share : kShares) {
        cells.emplace_back(left, box.top() + look().px(6), share * box.width() - look().px(8), box.height());
        left += share * box.width();
    }
    drawLine(painter, cells[0], qs(reading.name), bold, theme.text);
    drawLine(painter, cells[1], figureWords(reading, reading.nominal), bold, theme.text);
    if (!reading.most.empty()) {
        drawLine(painter, cells[2], figureWords(reading, reading.least), words, theme.dimText, Qt::AlignRight);
        paintHistogram(painter, cells[3].adjusted(0, look().px(-4), 0, look().px(-12)), reading);
        drawLine(painter, cells[4], figureWords(reading, reading.greatest), words, theme.dimText);
    }
    drawLine(painter, cells[5], mostWords(reading), words, theme.dimText);
}

void SpreadCard::paintBody(QPainter& painter) {
    const QRectF box = body();
    const int below = rowCount() - first_ - wholeRows();
    const QRectF head(box.left(), box.top(), widthBesideButton(), 0);
    QStringList forms{QStringLiteral("With real parts, each within its tolerance"), QStringLiteral("With real parts")};
    if (first_ > 0 || below > 0)
        forms.prepend(QStringLiteral("With real parts, each within its tolerance (%1 to %2 of %3)")
                          .arg(first_ + 1)
                          .arg(std::min(first_ + wholeRows(), rowCount()))
                          .arg(rowCount()));
    drawHeading(painter, head, forms);
    if (!spread()) {
        return drawLine(painter, box.adjusted(0, look().px(kSpreadHead), 0, 0), QStringLiteral("One moment\u2026"),
                        look().font(text::kLabel), look().theme->dimText);
    }
    if (!spread()->why.empty()) {
        drawBlock(painter, box.adjusted(0, look().px(kSpreadHead), 0, -look().px(kSpreadFoot)), qs(spread()->why),
                  look().font(text::kLabel), look().theme->text);
    }
    for (int row = first_; row < std::min(first_ + wholeRows(), rowCount()); ++row)
        paintRow(painter, rowBox(row), spread()->readings[static_cast<std::size_t>(row)]);
    const QRectF foot(box.left(), box.bottom() - look().px(kSpreadFoot) + look().px(3),
                      battery_->x() - box.left() - look().px(10), 0);
    drawLine(painter, foot, lifeWords(), look().font(kSpreadWords), look().theme->text);
}

}  // namespace tiepoint::ui
