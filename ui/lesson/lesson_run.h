#pragma once
// A lesson as it is given: which step stands on the table, how far its question has come, hands counted, tables looked at. Brings the document to
// each step exactly, by one edit, and holds what hands hold there. Knows no widget. Window's thread only.

#include "core/course/class_record.h"
#include "core/course/lesson.h"
#include "ui/document/bench_document.h"
#include "ui/live/live_bench.h"

#include <QObject>

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace tiepoint::ui {

class LessonRun : public QObject {
    Q_OBJECT
public:
    /// How far a prediction has come; a step without one is revealed at once.
    enum class Phase { Vote, Talk, VoteAgain, Revealed, WrongIdea };
    static constexpr int kTables = 15;
    static constexpr int kMostHands = 99;

    /// Keeps what is counted in a folder of its own, by lesson and table, without names.
    LessonRun(BenchDocument& document, LiveBench& live, const QString& folder, QObject* parent = nullptr);

    /// Takes a lesson, standing at its start; null: none.
    void setLesson(std::shared_ptr<const Lesson> lesson);
    const std::shared_ptr<const Lesson>& lesson() const { return lesson_; }

    /// Whether it is being given: a step of it stands on the table.
    bool isRunning() const { return step_ >= 0; }
    int step() const { return step_; }  ///< -1: not begun
    const LessonStep& present() const { return lesson_->steps[static_cast<std::size_t>(step_)]; }
    Phase phase() const { return phase_; }
    /// Until the reveal light, arrows, readings, counts and the supply's display stay hidden.
    bool isVeiled() const;
    bool showsWrongIdea() const { return isRunning() && phase_ == Phase::WrongIdea; }

    /// The next thing: the question's next phase, or the next step. Does nothing at the end.
    void next();
    void previous();
    /// Whether nothing comes after what stands there.
    bool isAtEnd() const;
    /// Any step, at once and exactly.
    void goTo(int step);
    /// Ends giving it; the bench stays as the step has it.
    void end();

    /// Hands counted for an answer, in the vote that is open; -1 where none has been counted yet.
    int hands(int answer) const { return handsIn(phase_ >= Phase::VoteAgain, answer); }
    int handsBefore(int answer) const { return handsIn(false, answer); }  ///< in the first vote
    /// Counted at the table that is being counted, or of the whole class.
    void setHands(int answer, int count);
    /// Hands are counted table by table, or all at once.
    bool countsByTable() const { return table_ != kWholeClass; }
    int table() const { return table_; }  ///< whose hands are counted now; kWholeClass: all at once
    void setTable(int table);
    /// Hands of one table in the vote that is open; -1 where none has been counted.
    int handsOf(int table, int answer) const;
    bool isCounted(int table) const;
    /// The last step that stood on the table when the lesson was given before; -1: it never was.
    int stepBefore() const { return stepBefore_; }
    /// The questions on paper of the lesson that was given last, if that was another one.
    const ClassRecord& lastLesson() const { return last_; }
    /// Whether a table's board was looked at, in this stop step.
    bool isTicked(int table) const { return record_.looked.contains({step_, table}); }
    void setTicked(int table, bool ticked);
    /// The scale of all arrows of the lesson, so that steps can be compared, A.
    double fullScaleAmpere() const { return fullScale_; }

Q_SIGNALS:
    void lessonChanged();
    void aboutToMove();            ///< the table is still as it was
    void stepChanged(int before);  ///< another step stands on the table, or none any more
    void changed();                ///< any of the above

private:
    void bring(int step, Phase phase);
    void holdOnly(const std::vector<std::string>& ids);
    int handsIn(bool second, int answer) const;
    const Vote* voteIn(bool second) const;
    void recall();
    void keep();
    QString recordPath() const;
    QString lastRecordPath() const { return folder_ + QStringLiteral("/last.json"); }

    BenchDocument& document_;
    LiveBench& live_;
    QString folder_;
    std::shared_ptr<const Lesson> lesson_;
    int step_ = -1;
    Phase phase_ = Phase::Revealed;
    double fullScale_ = 0.01;
    ClassRecord record_, last_;
    int table_ = kWholeClass, stepBefore_ = -1;
};

}  // namespace tiepoint::ui
