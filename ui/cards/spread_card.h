#pragma once
// Between which limits the readings lie when the bench is built from real parts, as a card: a row for each, with its nominal figure, a small
// histogram of the draws between least and greatest, and the part that matters most; below, how long a battery lasts. Where there are more
// rows than room, they scroll. Says nothing by itself: it shows what it is given.

#include "ui/cards/aside_card.h"
#include "ui/live/questions.h"

#include <QStringList>

#include <memory>
#include <vector>

namespace tiepoint::ui {

class SpreadCard : public AsideCard {
    Q_OBJECT
public:
    explicit SpreadCard(QWidget* parent);

    void showAnswer(std::shared_ptr<const SpreadAnswer> answer);
    /// The bench or the hands changed and the new answer isn't there yet: nothing of the old one is shown.
    void showStale();

    const Spread* spread() const { return answer_ && !stale_ ? &answer_->spread : nullptr; }
    /// What stands below the rows: "3 cells in a holder last 23 days".
    QString lifeWords() const;
    /// What is read to who can't see the card.
    QString spoken() const;
    /// Chooses the next battery.
    QToolButton* batteryButton() const { return battery_; }
    BatteryChoice chosenBattery() const { return choices_[static_cast<std::size_t>(choice_)]; }

    bool isForRoom() const override { return true; }

Q_SIGNALS:
    void batteryChosen();

protected:
    void paintBody(QPainter& painter) override;
    void arrangeCard() override;
    void wheelEvent(QWheelEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    int rowCount() const { return spread() ? static_cast<int>(spread()->readings.size()) : 0; }
    int wholeRows() const;
    void scrollTo(int first);
    QRectF rowBox(int row) const;
    void paintRow(QPainter& painter, const QRectF& box, const SpreadReading& reading) const;
    void paintHistogram(QPainter& painter, const QRectF& box, const SpreadReading& reading) const;
    void followBattery();

    std::shared_ptr<const SpreadAnswer> answer_;
    bool stale_ = true;
    int first_ = 0;                       ///< the row at the top
    std::vector<BatteryChoice> choices_;  ///< the first: those on the bench
    int choice_ = 0;
    QToolButton* battery_;
};

}  // namespace tiepoint::ui
