#pragma once
// Help with a real board, as a card: what was seen and measured, the next question large with a key for each answer and what it would leave,
// and the causes that are still possible; those ruled out stand struck through, with the reading that ruled them out. Says nothing by itself:
// it shows what it is given and tells what was chosen.

#include "ui/cards/aside_card.h"
#include "ui/live/doctor_run.h"

#include <QLabel>
#include <QLineEdit>
#include <QScrollArea>

#include <memory>
#include <vector>

namespace tiepoint::ui {

class DoctorCard : public AsideCard {
    Q_OBJECT
public:
    explicit DoctorCard(QWidget* parent);

    bool isForRoom() const override { return true; }

    /// The answer to what was asked last; null: it is being worked out.
    void showAnswer(std::shared_ptr<const DoctorAnswer> answer);
    /// What was seen so far, in words.
    void showSeen(const QStringList& seen);
    /// What the field takes: "volts at f22"; and how lights are seen now: "with S1 pressed".
    void setFieldHint(const QString& hint);
    void setTable(const QString& table);
    /// The light that the keys of what is seen are about, and how the switches stand: "D1 with S1 pressed"; empty: there is none.
    void setLight(const QString& light);

    const DoctorAnswer* answer() const { return answer_.get(); }
    const std::vector<QToolButton*>& answerKeys() const { return answers_; }
    const std::vector<QToolButton*>& lightKeys() const { return lights_; }
    QLineEdit* field() const { return field_; }
    QLineEdit* table() const { return table_; }
    QToolButton* backKey() const { return back_; }
    QToolButton* freshKey() const { return fresh_; }

Q_SIGNALS:
    void answered(int choice);
    void lightSeen(int kind);  ///< dark, dim, lit, always lit, hot
    void typed(const QString& text);
    void tableChosen(const QString& table);
    void backWanted();
    void freshWanted();

protected:
    void paintBody(QPainter& painter) override;
    void arrangeCard() override;

private:
    QToolButton* makeKey(const QString& text, const QString& tip);
    void makeAnswerKeys();
    /// Puts keys beside each other from a place on, in as many rows as they need; returns how high they stand.
    double placeKeys(const std::vector<QToolButton*>& keys, const QRectF& room);
    QString causesInColour() const;
    QString seenInColour() const;

    std::shared_ptr<const DoctorAnswer> answer_;
    QStringList seen_;
    QString light_;
    QScrollArea *seenArea_, *causesArea_;
    QLabel *seenWords_, *causesWords_;
    QLineEdit *field_, *table_;
    std::vector<QToolButton*> answers_, lights_;
    QToolButton *back_, *fresh_;
};

}  // namespace tiepoint::ui
