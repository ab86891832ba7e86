#pragma once
// What was seen and measured, and what comes next: one question in an accent frame, with the field for what the meter shows and, before
// anybody answers, what each answer would leave. At the end the mend stands there.

#include "ui/cards/card.h"
#include "ui/live/doctor_run.h"

#include <QLineEdit>
#include <QToolButton>

#include <memory>
#include <vector>

namespace tiepoint::ui {

/// One thing that was seen: a reading has its place and figure apart.
struct DoctorSeen {
    QString place, figure;  ///< "c14", "5.0 V"; empty: the words say all
    QString words;          ///< "D1 is dark while S1 is pressed"; of a reading only its position
    friend bool operator==(const DoctorSeen&, const DoctorSeen&) = default;
};

class DoctorAskCard : public Card {
    Q_OBJECT
public:
    explicit DoctorAskCard(QWidget* parent);

    void showSeen(std::vector<DoctorSeen> seen);
    /// The answer to what was asked last; null: it is being worked out.
    void showAnswer(std::shared_ptr<const DoctorAnswer> answer);
    /// Where the red tip stands or is to stand; empty: nowhere. `chosen`: by a click, not by the question.
    void showPlace(const QString& hole, bool chosen);
    void setTable(const QString& table);
    /// The answer buttons stay away: the pictures beside are the answers.
    void setAnsweredBeside(bool beside);

    const std::vector<QToolButton*>& answerButtons() const { return answers_; }
    const std::vector<DoctorSeen>& seen() const { return seen_; }
    QLineEdit* field() const { return field_; }
    QLineEdit* table() const { return table_; }
    QToolButton* backButton() const { return back_; }
    QToolButton* freshButton() const { return fresh_; }

Q_SIGNALS:
    void answered(int choice);
    void typed(const QString& text);
    void tableChosen(const QString& table);
    void backWanted();
    void freshWanted();

protected:
    void paintBody(QPainter& painter) override;
    void arrangeCard() override;

private:
    void makeAnswerButtons();
    void follow();
    double answersHigh() const;
    int broadAnswer() const;
    QRectF nextBox() const;
    void paintSeen(QPainter& painter, const QRectF& room);
    void paintNext(QPainter& painter, const QRectF& box);

    std::shared_ptr<const DoctorAnswer> answer_;
    std::vector<DoctorSeen> seen_;
    QString hole_;
    bool chosen_ = false, beside_ = false;
    QLineEdit *field_, *table_;
    std::vector<QToolButton*> answers_;
    QToolButton *back_, *fresh_;
};

}  // namespace tiepoint::ui
