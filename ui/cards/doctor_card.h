#pragma once
// Help with a real board: three cards beside each other. What is seen of a light, in pictures; what was seen and measured, with the next
// question; and what is still possible. Says nothing by itself: it shows what it is given and tells what was chosen.

#include "ui/cards/doctor_ask_card.h"
#include "ui/cards/doctor_causes_card.h"
#include "ui/cards/doctor_seen_card.h"

namespace tiepoint::ui {

class DoctorCard : public Card {
    Q_OBJECT
public:
    explicit DoctorCard(QWidget* parent);

    bool isForRoom() const override { return true; }
    double roomHeight(double most) const override { return most; }

    /// The answer to what was asked last; null: it is being worked out. `seen`: what was seen so far, in a few words each.
    void showAnswer(std::shared_ptr<const DoctorAnswer> answer, const QStringList& seen);
    const DoctorAnswer* answer() const { return answer_.get(); }

    DoctorSeenCard& lights() const { return *lights_; }
    DoctorAskCard& asking() const { return *asking_; }
    DoctorCausesCard& causes() const { return *causes_; }

Q_SIGNALS:
    void closed();

protected:
    void paintSurface(QPainter& painter) override;
    void paintBody(QPainter& painter) override;
    void arrangeCard() override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    std::shared_ptr<const DoctorAnswer> answer_;
    DoctorSeenCard* lights_;
    DoctorAskCard* asking_;
    DoctorCausesCard* causes_;
};

}  // namespace tiepoint::ui
