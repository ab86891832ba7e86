#pragma once
// Asking the bench: the truth table and "why?", their menu, their cards and what choosing on them does. Joins the questions that a
// thread works out to the cards that show the answers; changes the bench only by edits, and hands only by presses.

#include "ui/cards/answer_card.h"
#include "ui/cards/card_row.h"
#include "ui/cards/truth_card.h"
#include "ui/document/bench_document.h"
#include "ui/live/live_bench.h"
#include "ui/view/bench_view.h"

#include <QAction>
#include <QMenu>
#include <QMenuBar>

#include <string>

namespace tiepoint::ui {

class Inquiry : public QObject {
    Q_OBJECT
public:
    /// Its menu stands before `nextInBar`.
    Inquiry(BenchDocument& document, LiveBench& live, BenchView& view, CardRow& cards, QMenuBar& menus,
            QAction* nextInBar, QWidget* window);

    QAction* tableAction() const { return tableAction_; }
    QAction* whyAction() const { return whyAction_; }
    TruthCard& table() const { return *table_; }
    AnswerCard& answer() const { return *answer_; }
    Questions& questions() const { return *questions_; }
    QMenu& menu() const { return *menu_; }
    /// Puts away the table or the answer.
    void putAway();

Q_SIGNALS:
    void cardWanted();  ///< a card is about to be shown: the row of cards has to be there

private:
    void connectCards();
    void showAnswer(const WhyAnswer& answer);
    void showTable(bool wanted);
    void askAbout(const std::string& part);
    void followBench();
    void followReveal();
    void followInstant();
    void setPosition(int row);
    void carryOut(const Remedy& remedy);
    void holdOnly(const std::set<std::string, std::less<>>& held);
    /// The part that a question is about: the one selected, or pointed at, or the most interesting one.
    std::string partInQuestion() const;
    int presentRow() const;

    BenchDocument& document_;
    LiveBench& live_;
    BenchView& view_;
    CardRow& cards_;
    Questions* questions_;
    QMenu* menu_;
    TruthCard* table_;
    AnswerCard* answer_;
    QAction* tableAction_;
    QAction* whyAction_;
    std::string asked_;   ///< the part of the answer card
    bool holds_ = false;  ///< this object pressed something
};

}  // namespace tiepoint::ui
