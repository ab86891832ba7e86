#pragma once
// What is wrong? Two choices, the thing and what is wrong with it; the sentence that they make stands below, with the button that tries it. After
// that the card says what the bench answers.

#include "core/hunt/fault.h"
#include "ui/cards/card.h"
#include "ui/cards/hunt_text.h"

#include <QToolButton>

#include <vector>

namespace tiepoint::ui {

class HuntCauseCard : public Card {
    Q_OBJECT
public:
    explicit HuntCauseCard(QWidget* parent);

    /// The things that may be to blame; what was chosen stays if it is still there.
    void showThings(std::vector<HuntThing> things);
    /// What the bench answers to the guess; empty: nothing yet.
    void showAnswer(const QString& words, bool solved);

    std::string thing() const { return thing_; }
    const Fault* fault() const { return fault_; }
    bool isComplete() const { return !thing_.empty() && fault_; }
    QString answer() const { return answer_; }
    bool isSolved() const { return solved_; }

    QToolButton* thingButton(const std::string& id) const;
    QToolButton* faultButton(const Fault& fault) const;
    QToolButton* tryButton() const { return try_; }

Q_SIGNALS:
    void guessChanged();
    void tried();
    void finished();  ///< the same key, once it is solved

protected:
    void paintBody(QPainter& painter) override;
    void arrangeCard() override;

private:
    void follow();
    double arrangeRow(const std::vector<QToolButton*>& buttons, double top, double high);

    std::vector<HuntThing> things_;
    std::vector<QToolButton*> thingButtons_, faultButtons_;
    QToolButton* try_;
    std::string thing_;
    const Fault* fault_ = nullptr;
    QString answer_;
    bool solved_ = false;
};

/// Style sheet of buttons that are chosen among others; checked ones are framed in the accent's colour.
QString choiceButtonStyle(const Look& look);

}  // namespace tiepoint::ui
