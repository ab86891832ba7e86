#pragma once
// Remembers how the bench read before the last edit or press, and what that changed, for as long as it is shown. Steps that follow each
// other at once, as while a knob turns, are compared with the reading before the first of them. Belongs to the window's thread.

#include "core/snapshot/changes.h"

#include <QElapsedTimer>
#include <QObject>
#include <QTimer>

#include <memory>
#include <vector>

namespace tiepoint::ui {

class Before : public QObject {
    Q_OBJECT

public:
    static constexpr int kShownMs = 4000;

    Before();

    /// Takes the next answer. Whether changes() became another list.
    bool follow(std::shared_ptr<const Snapshot> snapshot);
    /// Another bench was opened.
    void forget();
    /// How the bench read before the last edit or press, and how it reads now; null where nothing is known. They stay when nothing is shown
    /// any more.
    const std::shared_ptr<const Snapshot>& base() const { return base_; }
    const std::shared_ptr<const Snapshot>& last() const { return last_; }
    /// Null while nothing is to be shown.
    std::shared_ptr<const std::vector<Change>> changes() const { return changes_; }

Q_SIGNALS:
    void faded();  ///< the changes were shown long enough

private:
    void end();

    std::shared_ptr<const Snapshot> base_, last_;
    std::shared_ptr<const std::vector<Change>> changes_;
    QElapsedTimer sinceLast_;
    QTimer showing_;
};

}  // namespace tiepoint::ui
