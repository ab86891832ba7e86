#include "ui/window/spread_desk.h"

namespace tiepoint::ui {

SpreadDesk::SpreadDesk(const Parts& parts, QMenu& menu, QWidget* window)
    : QObject(window),
      parts_(parts),
      card_(new SpreadCard(&parts.cards)),
      action_(new QAction(QStringLiteral("S&pread and life"), this)) {
    card_->hide();
    action_->setCheckable(true);
    window->addAction(action_);
    menu.addAction(action_);
    connect(action_, &QAction::triggered, this, &SpreadDesk::show);
    connect(card_, &SpreadCard::batteryChosen, this, &SpreadDesk::ask);
    connect(card_, &AsideCard::closed, this, [this] {
        parts_.cards.showAside(nullptr);
        parts_.view.setFocus(Qt::OtherFocusReason);
    });
    connect(&parts.cards, &CardRow::asideChanged, this,
            [this](const Card* aside) { action_->setChecked(aside == card_); });
    connect(&parts.document, &BenchDocument::benchChanged, card_, &SpreadCard::showStale);
    connect(&parts.live, &LiveBench::inputsChanged, card_, &SpreadCard::showStale);
    connect(&parts.live, &LiveBench::answerReady, this, &SpreadDesk::ask);
    connect(&parts.questions, &Questions::spreadReady, this, [this](const std::shared_ptr<const SpreadAnswer>& answer) {
        const bool present =
            answer->revision == parts_.document.revision() && answer->inputSequence == parts_.live.inputs().sequence;
        if (present) card_->showAnswer(answer);
    });
}

void SpreadDesk::show(bool wanted) {
    if (!wanted) return parts_.cards.showAside(nullptr);
    Q_EMIT cardWanted();
    parts_.cards.showAside(card_);
    ask();
}

void SpreadDesk::ask() {
    if (!card_->isVisibleTo(&parts_.cards)) return;
    const auto snapshot = parts_.live.snapshot();
    if (snapshot && snapshot->revision == parts_.document.revision())
        parts_.questions.askSpread(snapshot, card_->chosenBattery());
}

}  // namespace tiepoint::ui
