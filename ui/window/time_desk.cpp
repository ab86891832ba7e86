#include "ui/window/time_desk.h"

#include "ui/view/key_list.h"

#include <algorithm>
#include <utility>

namespace tiepoint::ui {
namespace {

QAction* timeAction(QWidget* window, QMenu& menu, const char* words, KeyFor what) {
    auto* action = new QAction(QString::fromUtf8(words), window);
    action->setShortcuts(QList<QKeySequence>(keysFor(what).begin(), keysFor(what).end()));
    window->addAction(action);
    menu.addAction(action);
    return action;
}

}  // namespace

TimeDesk::TimeDesk(const Parts& parts, QMenu& menu, QWidget* window)
    : QObject(window),
      parts_(parts),
      card_(new TimeCard(&parts.cards)) {
    QMenu& own = *menu.addMenu(QStringLiteral("T&ime"));
    show_ = timeAction(window, own, "The card of &time", KeyFor::TimeCard);
    pause_ = timeAction(window, own, "Time stands st&ill", KeyFor::TimeStill);
    slower_ = timeAction(window, own, "&Slower", KeyFor::TimeSlower);
    faster_ = timeAction(window, own, "&Faster", KeyFor::TimeFaster);
    step_ = timeAction(window, own, "&One step on", KeyFor::TimeStep);
    restart_ = timeAction(window, own, "&Power up again", KeyFor::TimeRestart);
    card_->hide();
    show_->setCheckable(true);
    pause_->setCheckable(true);
    connect(show_, &QAction::triggered, this, &TimeDesk::show);
    connect(pause_, &QAction::triggered, &parts_.live, &LiveBench::setPaused);
    connect(pause_, &QAction::triggered, this, &TimeDesk::follow);
    connect(slower_, &QAction::triggered, this, [this] { stepRate(-1); });
    connect(faster_, &QAction::triggered, this, [this] { stepRate(1); });
    connect(step_, &QAction::triggered, &parts_.live, &LiveBench::stepOn);
    connect(restart_, &QAction::triggered, &parts_.live, &LiveBench::restart);
    connect(card_, &TimeCard::detentChosen, this, &TimeDesk::choose);
    connect(card_, &TimeCard::stepAsked, step_, &QAction::trigger);
    connect(card_, &TimeCard::restartAsked, restart_, &QAction::trigger);
    connect(&parts_.live, &LiveBench::snapshotReady, this, &TimeDesk::follow);
    connect(&parts_.cards, &CardRow::asideChanged, this, [this](const Card* aside) {
        if (room_) show_->setChecked(aside == card_);
    });
    // Another bench begins at power-up, at the pace of life.
    connect(&parts_.document, &BenchDocument::benchReplaced, this, [this] {
        putAway_ = false;
        parts_.live.setPaused(false);
        parts_.live.setTimeScale(1);
        isNew_ = true;
    });
    // After the window has sent its nets to the solver.
    connect(&parts_.document, &BenchDocument::benchChanged, this, [this] {
        if (std::exchange(isNew_, false)) parts_.live.beginAnew();
    });
    follow();
}

int TimeDesk::detent() const {
    return parts_.live.isPaused() ? kStillDetent : detentOf(parts_.live.inputs().timeScale);
}

void TimeDesk::choose(int detent) {
    if (detent != kStillDetent) parts_.live.setTimeScale(kTimeRates[static_cast<std::size_t>(detent)]);
    parts_.live.setPaused(detent == kStillDetent);
    follow();
}

void TimeDesk::stepRate(int by) {
    const int now = detent();
    choose(std::clamp(now + by, kStillDetent, static_cast<int>(kTimeRates.size()) - 1));
}

void TimeDesk::show(bool wanted) {
    if (room_) {
        if (wanted) {
            Q_EMIT cardWanted();
            follow();
        }
        return parts_.cards.showAside(wanted ? card_ : nullptr);
    }
    putAway_ = !wanted;
    if (wanted) Q_EMIT cardWanted();
    parts_.cards.setTime(wanted ? card_ : nullptr);
    follow();
}

void TimeDesk::setRoom(bool room) {
    if (room_ == room) return;
    room_ = room;
    if (room) {
        parts_.cards.setTime(nullptr);
        show_->setChecked(false);
        return;
    }
    if (parts_.cards.aside() == card_) parts_.cards.showAside(nullptr);
    moves_ = false;  // the card comes back as the bench asks for it
    follow();
}

void TimeDesk::follow() {
    const auto snapshot = parts_.live.snapshot();
    const bool present = snapshot && snapshot->revision == parts_.document.revision();
    if (present && std::exchange(moves_, snapshot->moves) != snapshot->moves && !room_) {
        const bool comes = snapshot->moves && !putAway_;
        show_->setChecked(comes);
        parts_.cards.setTime(comes ? card_ : nullptr);
    }
    for (QAction* action : {pause_, slower_, faster_, step_, restart_}) action->setEnabled(moves_);
    show_->setEnabled(moves_ || show_->isChecked());
    pause_->setChecked(parts_.live.isPaused());
    if (!present) return;
    TimeCard::State state;
    state.rate = parts_.live.isPaused() ? 0 : parts_.live.inputs().timeScale;
    state.kept = parts_.live.keptShare();
    state.second = snapshot->timeSecond;
    state.stopped = snapshot->moves && snapshot->status() == Status::None;
    card_->showState(state);
}

}  // namespace tiepoint::ui
