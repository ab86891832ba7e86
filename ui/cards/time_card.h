#pragma once
// Time, as a card: at which rate the bench's clock runs, in words, what a second of the circuit lasts, the clock itself, the lever, and
// keys for one step on and back to power-up. Where the computer can't keep the rate the card says at which fraction it runs. Shows what it
// is given and says what was chosen; runs nothing.

#include "ui/cards/card.h"
#include "ui/cards/time_lever.h"

#include <QToolButton>

namespace tiepoint::ui {

class TimeCard : public Card {
    Q_OBJECT
public:
    explicit TimeCard(QWidget* parent);

    /// How time runs at the moment.
    struct State {
        double rate = 1;  ///< seconds of the bench for each on the wall; 0: it stands
        double kept = 1;  ///< what share of that is kept
        double second = 0;
        bool stopped = false;  ///< no solution was found further on
        friend bool operator==(const State&, const State&) = default;
    };
    void showState(const State& state);

    TimeLever& lever() const { return *lever_; }
    QToolButton* stepButton() const { return step_; }
    QToolButton* restartButton() const { return restart_; }
    /// "Ten times slower".
    QString headline() const;
    /// "1 s of the circuit lasts 10 s."
    QString explanation() const;
    /// "circuit time 16.0 s".
    QString clockWords() const;

    bool isForRoom() const override { return true; }
    double roomHeight(double most) const override;

Q_SIGNALS:
    void detentChosen(int detent);
    void stepAsked();
    void restartAsked();

protected:
    void arrangeCard() override;
    void paintBody(QPainter& painter) override;

private:
    int decimals() const;

    State state_;
    QString seen_;
    TimeLever* lever_;
    QToolButton *step_, *restart_;
};

}  // namespace tiepoint::ui
