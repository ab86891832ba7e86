#pragma once
// Lights that flash: more than three times a second may set off a seizure in people with photosensitive epilepsy (Web Content
// Accessibility Guidelines 2.2, success criterion 2.3.1). At the desk a notice says so and offers their steady mean; before a room they are
// steady until the teacher chooses otherwise. The choice holds until another bench is opened. Window's thread only.

#include "ui/document/bench_document.h"
#include "ui/live/live_bench.h"
#include "ui/window/message_bar.h"

#include <QAction>
#include <QMenu>
#include <QObject>

#include <optional>

namespace tiepoint::ui {

class FlashDesk : public QObject {
    Q_OBJECT
public:
    /// Adds its action to the menu and to the window.
    FlashDesk(BenchDocument& document, LiveBench& live, MessageBar& bar, QMenu& menu, QWidget* window);

    QAction* steadyAction() const { return steady_; }
    void setRoom(bool room);

private:
    void follow();
    void apply();
    void choose(bool steady);

    BenchDocument& document_;
    LiveBench& live_;
    MessageBar& bar_;
    QAction* steady_;
    std::optional<bool> atDesk_, inRoom_;  ///< what was chosen; nothing: nobody has chosen yet
    bool room_ = false, warned_ = false;
};

}  // namespace tiepoint::ui
