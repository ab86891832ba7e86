#pragma once
// Autosave: keeps a copy of unsaved work in a recovery folder, from the first change on: each finished edit is handed over at once, so
// that a program that is killed loses the last gesture at most. A bench of usual size is put into its copy at once, in a fraction of a
// millisecond, and a worker thread waits for the disk; of a large one the window's thread only hands the immutable bench over, and the
// worker writes the newest, resting between two copies. Always atomically. The copy goes away when the work is saved or given up, and stays when the
// program ends in any other way: the next start finds and offers it.

#include "ui/document/bench_document.h"
#include "ui/document/recovery.h"

#include <QObject>
#include <QThread>
#include <QTimer>

#include <optional>

namespace tiepoint::ui {

class Autosave : public QObject {
    Q_OBJECT
public:
    /// Watches the document; writes into the folder, which is made when first needed.
    Autosave(BenchDocument& document, const QString& folder, QObject* parent = nullptr);
    ~Autosave() override;

    /// Drops the copy: the work was saved or given up.
    void discard();
    /// Waits until everything handed over is written. For tests and for the end of the program. Returns whether the present bench has
    /// its copy: not if it couldn't be written.
    bool finish();
    /// Time that the last autosave took of the window's thread.
    double lastWindowThreadMs() const { return lastMs_; }
    QString copyPath() const { return copyPath_; }

Q_SIGNALS:
    void failed(const QString& why);  ///< a copy couldn't be written; said once until one could

private:
    class Writer;

    void schedule();
    void hand();
    void handLarge();
    void handUsual();
    void written(double ms);
    void tell(const std::optional<QString>& why);

    BenchDocument& document_;
    QString copyPath_;
    QThread thread_;
    Writer* writer_;  ///< lives in the thread; jobs are queued to it
    QTimer timer_;
    bool writing_ = false;  ///< a large copy is with the worker
    bool newer_ = false;    ///< and the bench has changed since it was handed over
    double lastMs_ = 0;
    bool complained_ = false;
};

}  // namespace tiepoint::ui
