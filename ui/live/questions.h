#pragma once
// Questions about the bench that take longer than a frame: its truth table, and why a part does what it does. A thread of its own works
// them out from immutable snapshots; the newest question of each kind wins. Answers come back in the window's thread.

#include "core/truth/truth_table.h"
#include "core/why/explain.h"

#include <QObject>

#include <memory>
#include <string>

namespace tiepoint::ui {

/// A truth table, or why there is none, and the revision of the bench that it is about.
struct TableAnswer {
    quint64 revision = 0;
    std::shared_ptr<const Bench> bench;
    Result<TruthTable> table;
};

/// Why a part does what it does, and the instant that it is about.
struct WhyAnswer {
    quint64 revision = 0;
    quint64 inputSequence = 0;
    Answer answer;
};

class Questions : public QObject {
    Q_OBJECT
public:
    explicit Questions(QObject* parent = nullptr);
    ~Questions() override;

    void askTable(std::shared_ptr<const Snapshot> snapshot);
    /// Nothing comes of it if the bench has no such part.
    void askWhy(std::shared_ptr<const Snapshot> snapshot, const std::string& part, const ResistorDrawer& drawer);

Q_SIGNALS:
    void tableReady(std::shared_ptr<const tiepoint::ui::TableAnswer> answer);
    void whyReady(std::shared_ptr<const tiepoint::ui::WhyAnswer> answer);

private:
    class Worker;
    std::unique_ptr<Worker> worker_;
};

}  // namespace tiepoint::ui
