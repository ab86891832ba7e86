#include "ui/window/flash_desk.h"

#include "core/light/flashes.h"

#include <cmath>

namespace tiepoint::ui {

FlashDesk::FlashDesk(BenchDocument& document, LiveBench& live, MessageBar& bar, QMenu& menu, QWidget* window)
    : QObject(window),
      document_(document),
      live_(live),
      bar_(bar),
      steady_(new QAction(QStringLiteral("Flashing lights at their steady &mean"), this)) {
    steady_->setCheckable(true);
    window->addAction(steady_);
    menu.addAction(steady_);
    connect(steady_, &QAction::triggered, this, &FlashDesk::choose);
    connect(&live_, &LiveBench::snapshotReady, this, &FlashDesk::follow);
    connect(&document_, &BenchDocument::benchReplaced, this, [this] {
        atDesk_.reset();
        inRoom_.reset();
        warned_ = false;
        apply();
    });
    apply();
}

void FlashDesk::apply() {
    const bool steady = room_ ? inRoom_.value_or(true) : atDesk_.value_or(false);
    live_.setSteadyLight(steady);
    steady_->setChecked(steady);
}

void FlashDesk::choose(bool steady) {
    (room_ ? inRoom_ : atDesk_) = steady;
    apply();
}

void FlashDesk::setRoom(bool room) {
    room_ = room;
    warned_ = false;
    apply();
}

void FlashDesk::follow() {
    const auto snapshot = live_.snapshot();
    if (!snapshot || snapshot->revision != document_.revision() || warned_) return;
    if (snapshot->flashesPerSecond <= kMostFlashes || (room_ ? inRoom_ : atDesk_)) return;
    warned_ = true;
    const QString times = QString::number(std::lround(snapshot->flashesPerSecond));
    if (room_)
        return bar_.say(MessageBar::Tone::Notice,
                        QStringLiteral("Lights here flash %1 times a second. They are shown at their steady mean: "
                                       "flashes can set off a seizure in people with photosensitive epilepsy.")
                            .arg(times),
                        {{QStringLiteral("Keep them steady"), [this] { choose(true); }},
                         {QStringLiteral("Let them flash"), [this] { choose(false); }}});
    bar_.say(MessageBar::Tone::Notice,
             QStringLiteral("Lights here flash %1 times a second. That can set off a seizure in people with "
                            "photosensitive epilepsy.")
                 .arg(times),
             {{QStringLiteral("Show their steady mean"), [this] { choose(true); }},
              {QStringLiteral("Let them flash"), [this] { choose(false); }}});
}

}  // namespace tiepoint::ui
