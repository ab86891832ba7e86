#pragma once
// Exercises in the window: opens those that ship, says the task, counts what the limits leave beside the title, keeps its locks and compares the
// bench with the goal on a button. Window's thread only.

#include "core/compare/comparison.h"
#include "ui/document/file_actions.h"
#include "ui/window/message_bar.h"
#include "ui/window/sheet_tools.h"
#include "ui/window/title_line.h"

#include <QAction>
#include <QMenu>
#include <QObject>

#include <memory>

namespace tiepoint::ui {

class ExerciseDesk : public QObject {
    Q_OBJECT
public:
    struct Parts {
        BenchDocument& document;
        FileActions& files;
        SheetTools& sheets;
        TitleLine& title;
        MessageBar& bar;
        QAction *diagram, *tidy;  ///< what locks lock
    };
    /// Adds a menu of the exercises to the File menu, in front of an action of it.
    ExerciseDesk(const Parts& parts, QMenu& file, QAction* before, QWidget* window);

    bool isActive() const { return target_ != nullptr; }
    QAction* compareAction() const { return compare_; }
    QMenu* menu() const { return menu_; }
    /// What is asked for, in one or two sentences; empty without an exercise.
    QString task() const;

private:
    void followFile();
    void followBench();
    void sayTask();
    void compareWithGoal();

    Parts parts_;
    QMenu* menu_;
    QAction* compare_;
    std::shared_ptr<const ComparisonTarget> target_;  ///< null: no exercise stands on the table
};

}  // namespace tiepoint::ui
