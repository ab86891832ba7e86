#pragma once
// Two benches beside each other with what differs marked on both: the one on the table and a target. Lies over the whole stage; nothing of the bench
// changes. What differs stands in a list below; the line chosen is marked, without one all are. Compares in a thread of its own and gives up
// when it is closed. Window's thread only.

#include "core/compare/comparison.h"
#include "ui/theme/look.h"

#include <QLabel>
#include <QListWidget>
#include <QThreadPool>
#include <QToolButton>
#include <QWidget>

#include <stop_token>

namespace tiepoint::ui {

class ComparePanel : public QWidget {
    Q_OBJECT
public:
    explicit ComparePanel(QWidget* stage);
    ~ComparePanel() override;

    void setLook(const Look& look);
    /// Compares and shows; what a target without places has to show is its words alone. Of an exercise only one's own bench is shown and
    /// where to look on it, until the goal is asked for; `task` is said above.
    void compare(std::shared_ptr<const Bench> mine, std::shared_ptr<const ComparisonTarget> target,
                 const QString& task = {});

    const Comparison& comparison() const { return comparison_; }
    QLabel& verdict() const { return *verdict_; }
    QListWidget& list() const { return *list_; }
    QLabel& minePicture() const { return *pictures_[0]; }
    QLabel& targetPicture() const { return *pictures_[1]; }
    QLabel& task() const { return *task_; }
    QToolButton& goalButton() const { return *goal_; }
    bool showsGoal() const { return showsGoal_; }
    bool isWorking() const { return working_; }

Q_SIGNALS:
    void shown();  ///< a comparison is there to be read
    void closed();

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    void take(const Result<Comparison>& result);
    void fillList();
    void paintPictures();
    void arrange();
    void close();
    void toggleGoal();
    void layTitles();
    bool isExercise() const { return target_ && !target_->exercise.empty(); }
    const BenchDifference* chosen() const;

    Look look_;
    std::shared_ptr<const Bench> mine_;
    std::shared_ptr<const ComparisonTarget> target_;
    Comparison comparison_;
    QLabel* verdict_;
    QLabel* titles_[2];
    QLabel* pictures_[2];
    QListWidget* list_;
    QLabel* task_;
    QToolButton *done_, *goal_;
    std::vector<const BenchDifference*> rows_;  ///< what each line of the list is about; null: a limit
    bool showsGoal_ = true;
    QThreadPool pool_;
    std::stop_source stop_;
    int asked_ = 0;
    bool working_ = false;
};

}  // namespace tiepoint::ui
