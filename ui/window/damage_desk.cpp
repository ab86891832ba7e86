#include "ui/window/damage_desk.h"

#include "core/findings/damage.h"
#include "ui/theme/qs.h"

namespace tiepoint::ui {

DamageDesk::DamageDesk(BenchDocument& document, LiveBench& live, QMenu& menu, QWidget* window)
    : QObject(window),
      document_(document),
      live_(live),
      action_(new QAction(QStringLiteral("Da&mage stays"), this)) {
    action_->setCheckable(true);
    window->addAction(action_);
    menu.addAction(action_);
    connect(action_, &QAction::triggered, this, &DamageDesk::choose);
    connect(&document_, &BenchDocument::benchChanged, this,
            [this] { action_->setChecked(damageStays(*document_.bench())); });
    connect(&live_, &LiveBench::answerReady, this, &DamageDesk::followInstant);
}

void DamageDesk::choose(bool stays) {
    if (const auto refused = document_.push(damageStaysEdit(*document_.bench(), stays))) Q_EMIT said(*refused);
}

void DamageDesk::followInstant() {
    const auto snapshot = live_.snapshot();
    if (!snapshot || snapshot->revision != document_.revision()) return;
    const Bench& bench = *document_.bench();
    if (!damageStays(bench) || document_.undoStack().canRedo()) return;
    const std::vector<int> ruined = ruinedBy(*snapshot);
    if (ruined.empty()) return;
    const Edit edit = ruinEdit(bench, ruined);
    if (const auto refused = document_.push(edit)) return Q_EMIT said(*refused);
    Q_EMIT said(qs(edit.name) + QStringLiteral(": far over its maximum. Find the cause, then swap the part."));
}

}  // namespace tiepoint::ui
