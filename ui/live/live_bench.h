#pragma once
// Runs the document's bench off the paint path: a worker thread owns a Runner, gets immutable nets and inputs, and hands back
// immutable snapshots. The bench's clock runs beside the wall's (paced_run.h); while nothing moves the worker sleeps without a timer.
//
// Thread rules. This object belongs to the window's thread; the Runner to the worker alone, from the moment it is handed in. What goes to
// the worker lies in one slot: of benches the newest wins, of inputs none is lost, each with the instant at which a hand made it. What
// comes back lies in a mailbox: only the newest snapshot waits for the window, and at most one call is queued for it, however long
// it takes to come. Neither lock is held while solving or painting. When this object goes, the worker stops within the next turn of its
// loops (core/base/stopping.h) and is waited for; no call comes after that.

#include "core/snapshot/runner.h"

#include <QObject>

#include <memory>
#include <string>

namespace tiepoint::ui {

class LiveBench : public QObject {
    Q_OBJECT
public:
    /// Runs circuits at rest.
    explicit LiveBench(QObject* parent = nullptr);
    explicit LiveBench(std::unique_ptr<Runner> runner, QObject* parent = nullptr);
    ~LiveBench() override;

    /// The nets of the document's bench, as the scene has them.
    void setLayout(quint64 revision, std::shared_ptr<const Layout> layout);
    void setBench(quint64 revision, std::shared_ptr<const Bench> bench) {
        setLayout(revision, buildLayout(std::move(bench)));
    }
    /// Presses or releases a part; bumps the input sequence.
    void setHeld(const std::string& partId, bool held);
    bool isHeld(const std::string& partId) const;
    void releaseAll();
    /// Seconds of the bench for each second on the wall, above 0; an input like others.
    void setTimeScale(double scale);
    /// Lets the bench's clock stand; edits and presses are answered all the same.
    void setPaused(bool paused);
    bool isPaused() const { return paused_; }
    /// Goes on by one tick, as long as that lasts at the present scale of time.
    void stepOn();
    /// Back to power-up: what parts remember is forgotten, and time begins at 0.
    void restart();
    /// The same for a bench that has just come, of which nobody has asked anything yet.
    void beginAnew();
    /// What share of its rate the bench keeps: under 1 it is too fast for this computer.
    double keptShare() const;
    /// Shows lights that flash more than three times a second at their steady mean.
    void setSteadyLight(bool steady);
    bool isLightSteady() const { return steady_; }
    const Inputs& inputs() const { return inputs_; }
    /// The newest snapshot, or null.
    std::shared_ptr<const Snapshot> snapshot() const { return snapshot_; }
    /// Whether the worker has a timer set; false while it sleeps until it is asked something. For tests and measurements.
    bool isTicking() const;

Q_SIGNALS:
    void snapshotReady();  ///< in the window's thread; with each tick while anything moves
    void answerReady();    ///< after the first snapshot of another bench or of other inputs
    void inputsChanged();

private:
    class Worker;
    void changeInputs();
    void sendInputs();
    void take();
    std::shared_ptr<const Snapshot> seen(std::shared_ptr<const Snapshot> snapshot) const;

    quint64 revision_ = 0;
    std::shared_ptr<const Layout> layout_;
    Inputs inputs_;
    bool paused_ = false, steady_ = false;
    std::shared_ptr<const Snapshot> snapshot_;
    std::unique_ptr<Worker> worker_;  // last: ends its thread before the rest goes
};

}  // namespace tiepoint::ui
