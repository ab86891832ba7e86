#pragma once
// Why a part does what it does, as a card: the question, the chain of causes with the missing link marked, and a button for each remedy.

#include "ui/cards/aside_card.h"
#include "ui/live/questions.h"

#include <QLabel>
#include <QScrollArea>

#include <memory>
#include <vector>

namespace tiepoint::ui {

class AnswerCard : public AsideCard {
    Q_OBJECT
public:
    explicit AnswerCard(QWidget* parent);

    void showAnswer(std::shared_ptr<const WhyAnswer> answer);
    /// The bench changed and the new answer isn't there yet: nothing of the old one is shown or offered.
    void showStale();

    const Answer* answer() const { return shown_ && !stale_ ? &shown_->answer : nullptr; }
    const std::vector<QToolButton*>& remedyButtons() const { return buttons_; }

    bool isForRoom() const override { return true; }

Q_SIGNALS:
    void remedyChosen(const tiepoint::Remedy& remedy);

protected:
    void paintBody(QPainter& painter) override;
    void arrangeCard() override;

private:
    QString wordsInColour() const;
    void makeButtons();
    double arrangeButtons();

    std::shared_ptr<const WhyAnswer> shown_;
    bool stale_ = true;
    QScrollArea* area_;
    QLabel* words_;
    std::vector<QToolButton*> buttons_;
};

}  // namespace tiepoint::ui
