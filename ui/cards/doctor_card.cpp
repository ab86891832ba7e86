#include "ui/cards/doctor_card.h"

#include <QKeyEvent>

namespace tiepoint::ui {
namespace {

constexpr double kDoctorShares[] = {0.26, 0.38, 0.36};  // of the breadth

}  // namespace

DoctorCard::DoctorCard(QWidget* parent)
    : Card(parent),
      lights_(new DoctorSeenCard(this)),
      asking_(new DoctorAskCard(this)),
      causes_(new DoctorCausesCard(this)) {
    setAccessibleName(tr("Help with a real board"));
    connect(causes_, &AsideCard::closed, this, &DoctorCard::closed);
}

void DoctorCard::showAnswer(std::shared_ptr<const DoctorAnswer> answer, const QStringList& seen) {
    answer_ = answer;
    asking_->showAnswer(answer);
    // While the next answer is worked out the causes stay as they were: nothing flickers.
    if (answer) causes_->showAnswer(std::move(answer), seen);
    setAccessibleDescription(asking_->accessibleDescription());
}

void DoctorCard::arrangeCard() {
    Card* const cards[] = {lights_, asking_, causes_};
    double left = 0;
    for (int i = 0; i < 3; ++i) {
        const double wide = kDoctorShares[i] * width();
        cards[i]->setLook(look());
        cards[i]->setGeometry(QRectF(left, 0, wide, height()).toRect());
        left += wide;
    }
}

void DoctorCard::paintSurface(QPainter&) {}
void DoctorCard::paintBody(QPainter&) {}

void DoctorCard::keyPressEvent(QKeyEvent* event) {
    if (event->key() != Qt::Key_Escape) return Card::keyPressEvent(event);
    Q_EMIT closed();
}

}  // namespace tiepoint::ui
