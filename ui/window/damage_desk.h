#pragma once
// Damage that stays (core/findings/damage.h) in the window: the choice in a menu, and the edit that ruins a part once it got far too much. What
// was undone stays undone: nothing is ruined while a step can be done again.

#include "ui/document/bench_document.h"
#include "ui/live/live_bench.h"

#include <QAction>
#include <QMenu>

namespace tiepoint::ui {

class DamageDesk : public QObject {
    Q_OBJECT
public:
    DamageDesk(BenchDocument& document, LiveBench& live, QMenu& menu, QWidget* window);

    QAction* action() const { return action_; }

Q_SIGNALS:
    void said(const QString& line);  ///< for the bar

private:
    void choose(bool stays);
    void followInstant();

    BenchDocument& document_;
    LiveBench& live_;
    QAction* action_;
};

}  // namespace tiepoint::ui
