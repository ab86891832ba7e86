#pragma once
// Runs the document's bench off the paint path: a worker thread owns a Runner, gets immutable nets and inputs, and hands back
// immutable snapshots. The newest request wins; nothing is locked while painting.

#include "core/snapshot/runner.h"

#include <QObject>

#include <memory>
#include <string>

namespace tiepoint::ui {

class LiveBench : public QObject {
    Q_OBJECT
public:
    explicit LiveBench(QObject* parent = nullptr);
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
    const Inputs& inputs() const { return inputs_; }
    /// The newest snapshot, or null.
    std::shared_ptr<const Snapshot> snapshot() const { return snapshot_; }

Q_SIGNALS:
    void snapshotReady();  ///< in the window's thread
    void inputsChanged();

private:
    class Worker;
    void changeInputs();
    void ask();
    void take(std::shared_ptr<const Snapshot> snapshot);

    quint64 revision_ = 0;
    std::shared_ptr<const Layout> layout_;
    Inputs inputs_;
    std::shared_ptr<const Snapshot> snapshot_;
    std::unique_ptr<Worker> worker_;  // last: ends its thread before the rest goes
};

}  // namespace tiepoint::ui
