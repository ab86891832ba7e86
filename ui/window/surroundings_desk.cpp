#include "ui/window/surroundings_desk.h"

namespace tiepoint::ui {

SurroundingsDesk::SurroundingsDesk(BenchDocument& document, BenchView& view, CardRow& cards, QMenu& menu,
                                   QWidget* window)
    : QObject(window),
      document_(document),
      cards_(cards),
      card_(new SurroundingsCard(&cards)),
      action_(new QAction(QStringLiteral("L&ight and warmth"), this)) {
    card_->hide();
    action_->setCheckable(true);
    window->addAction(action_);
    menu.addAction(action_);
    connect(action_, &QAction::triggered, this, &SurroundingsDesk::show);
    connect(card_, &SurroundingsCard::chosen, this, &SurroundingsDesk::choose);
    connect(card_, &AsideCard::closed, this, [this, &view] {
        cards_.showAside(nullptr);
        view.setFocus(Qt::OtherFocusReason);
    });
    connect(&cards, &CardRow::asideChanged, this, [this](const Card* aside) { action_->setChecked(aside == card_); });
    connect(&document, &BenchDocument::benchChanged, this, &SurroundingsDesk::follow);
    follow();
}

void SurroundingsDesk::show(bool wanted) {
    if (!wanted) return cards_.showAside(nullptr);
    Q_EMIT cardWanted();
    cards_.showAside(card_);
}

void SurroundingsDesk::follow() {
    const auto& said = document_.bench()->surroundings;
    const Surroundings now = said ? static_cast<const Surroundings&>(*said) : Surroundings{};
    if (!(now == card_->surroundings())) card_->showSurroundings(now);
}

void SurroundingsDesk::choose(const Surroundings& surroundings, bool begins) {
    SaidSurroundings said = document_.bench()->surroundings.value_or(SaidSurroundings{});
    static_cast<Surroundings&>(said) = surroundings;
    if (begins) gesture_ = document_.newGesture();
    const Edit edit{"light and warmth", {SetSurroundings{std::move(said)}}};
    if (const auto refused = document_.push(edit, gesture_)) {
        Q_EMIT this->said(*refused);
        follow();
    }
}

}  // namespace tiepoint::ui
