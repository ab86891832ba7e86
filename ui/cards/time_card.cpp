#include "ui/cards/time_card.h"

#include "ui/theme/panels.h"

#include <algorithm>
#include <cmath>

namespace tiepoint::ui {
namespace {

// In the 1080-line layout, from the body's top.
constexpr double kHeadlineTop = 27, kHeadline = 44, kExplainTop = 78, kExplain = 20, kLeverTop = 88, kLeverHeight = 114;
constexpr double kTimeButton = 34, kTimeWords = 20;
constexpr double kKeptEnough = 0.9;  ///< less is told
constexpr double kTimeRoomHeight = 236;

/// "40": as many times as can be said.
QString timesInWords(double times) {
    const double digit = std::pow(10, std::floor(std::log10(times)) - 1);
    return QString::number(std::max(1.0, std::round(times / digit) * digit), 'f', times < 10 ? 1 : 0);
}

QString secondsInWords(double seconds) {
    constexpr double kWhole = 100;
    const QString figure = seconds >= kWhole ? QString::number(seconds, 'f', 0) : QString::number(seconds, 'g', 3);
    return figure + QStringLiteral(" s");
}

}  // namespace

TimeCard::TimeCard(QWidget* parent)
    : Card(parent),
      lever_(new TimeLever(this)),
      step_(new QToolButton(this)),
      restart_(new QToolButton(this)) {
    setAccessibleName(QStringLiteral("Time"));
    step_->setText(QStringLiteral("One step on"));
    restart_->setText(QStringLiteral("Power up again"));
    step_->setToolTip(QStringLiteral("One sixtieth of a second as seen, whether time stands or runs"));
    restart_->setToolTip(QStringLiteral("Back to the moment at which the supply is switched on: all charge is gone"));
    connect(lever_, &QAbstractSlider::valueChanged, this, &TimeCard::detentChosen);
    connect(step_, &QToolButton::clicked, this, &TimeCard::stepAsked);
    connect(restart_, &QToolButton::clicked, this, &TimeCard::restartAsked);
    for (QToolButton* button : {step_, restart_}) button->setFocusPolicy(Qt::TabFocus);
}

int TimeCard::decimals() const {
    const double rate = state_.rate > 0 ? std::min(1.0, state_.rate) : kTimeRates[static_cast<std::size_t>(1)];
    return 1 + static_cast<int>(std::lround(-std::log10(rate)));
}

QString TimeCard::headline() const { return detentWords(detentOf(state_.rate)); }

QString TimeCard::clockWords() const {
    return QStringLiteral("circuit time %1 s").arg(state_.second, 0, 'f', decimals());
}

QString TimeCard::explanation() const {
    if (state_.stopped) return QStringLiteral("No solution was found from here on: time stands.");
    if (!(state_.rate > 0)) return QStringLiteral("Time stands in the circuit. Readings are of this instant.");
    if (state_.kept < kKeptEnough)
        return QStringLiteral("Too fast to follow: it runs at 1/%1 of this rate, 1 s of the circuit lasts %2.")
            .arg(timesInWords(1 / state_.kept), secondsInWords(1 / (state_.rate * state_.kept)));
    return QStringLiteral("1 s of the circuit lasts %1.").arg(secondsInWords(1 / state_.rate));
}

void TimeCard::showState(const State& state) {
    state_ = state;
    {
        const QSignalBlocker quiet(lever_);
        if (const int detent = detentOf(state.rate); lever_->value() != detent) {
            lever_->setValue(detent);
            lever_->setAccessibleDescription(detentWords(detent));
            lever_->update();
        }
    }
    const QString now = headline() + QLatin1Char('\n') + explanation() + QLatin1Char('\n') + clockWords();
    if (now == std::exchange(seen_, now)) return;
    setAccessibleDescription(headline() + QStringLiteral(". ") + explanation() + QLatin1Char(' ') + clockWords());
    update();
}

double TimeCard::roomHeight(double most) const { return std::min(most, look().px(kTimeRoomHeight)); }

void TimeCard::arrangeCard() {
    const QRectF box = body();
    lever_->setLook(look());
    lever_->setGeometry(QRectF(box.left() - look().px(14), box.top() + look().px(kLeverTop),
                               box.width() + look().px(28), look().px(kLeverHeight))
                            .toRect());
    double right = box.right();
    for (QToolButton* button : {restart_, step_}) {
        button->setStyleSheet(wordButtonStyle(look()));
        button->setFont(look().font(kTimeWords));
        const double wide = button->sizeHint().width();
        button->setGeometry(
            QRectF(right - wide, box.top() + look().px(kHeadlineTop + 4), wide, look().px(kTimeButton)).toRect());
        right -= wide + look().px(6);
    }
}

void TimeCard::paintBody(QPainter& painter) {
    const QRectF box = body();
    const double half = box.width() / 2;
    drawHeading(painter, {box.left(), box.top() - look().px(6), half, 0}, {QStringLiteral("Time")});
    drawLine(painter, {box.left() + half, box.top() - look().px(6), half, 0}, clockWords(), look().font(kTimeWords + 2),
             look().theme->dimText, Qt::AlignRight);
    const double beside = step_->x() - box.left() - look().px(12);
    drawLine(painter, {box.left(), box.top() + look().px(kHeadlineTop - 6), beside, 0}, headline(),
             look().font(kHeadline, QFont::DemiBold), look().theme->text);
    drawLine(painter, {box.left(), box.top() + look().px(kExplainTop - 6), box.width(), 0}, explanation(),
             look().font(kExplain), look().theme->dimText);
}

}  // namespace tiepoint::ui
