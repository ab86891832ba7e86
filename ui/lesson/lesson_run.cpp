#include "ui/lesson/lesson_run.h"

#include "core/base/file_io.h"
#include "ui/theme/qs.h"

#include <QCryptographicHash>
#include <QDir>

#include <algorithm>
#include <cmath>

namespace tiepoint::ui {
namespace {

constexpr double kTooMuchAmpere = 0.03;  ///< steps that show too much current don't set the scale of the others

/// The smallest of 1, 2, 5 times a power of ten that holds the currents of most steps.
double scaleOf(const Lesson& lesson) {
    double most = 0;
    for (int step = 0; step < lesson.stepCount(); ++step) {
        const Situation there = situationOf(lesson, step);
        const auto snapshot = evaluate(there.bench, there.inputs);
        if (snapshot->status() == Status::Solved && snapshot->largestCurrentAmpere <= kTooMuchAmpere)
            most = std::max(most, snapshot->largestCurrentAmpere);
    }
    constexpr double kLeast = 1e-3;
    double scale = kLeast;
    for (constexpr std::array kSteps{2.0, 2.5, 2.0}; scale < most;) {
        for (const double factor : kSteps) {
            if (scale < most) scale *= factor;
        }
    }
    return scale;
}

/// What can't be read is as if nothing had been kept.
ClassRecord readRecord(const QString& path) {
    auto read = readClassRecordFile(path.toStdString());
    return read ? std::move(read).value() : ClassRecord{};
}

}  // namespace

LessonRun::LessonRun(BenchDocument& document, LiveBench& live, const QString& folder, QObject* parent)
    : QObject(parent),
      document_(document),
      live_(live),
      folder_(folder) {}

/// Titles may hold anything: files are named by a digest.
QString LessonRun::recordPath() const {
    constexpr int kLetters = 16;
    const QByteArray digest =
        QCryptographicHash::hash(QByteArray::fromStdString(lesson_->title), QCryptographicHash::Sha1);
    return folder_ + QLatin1Char('/') + QString::fromLatin1(digest.toHex().left(kLetters)) + QStringLiteral(".json");
}

void LessonRun::setLesson(std::shared_ptr<const Lesson> lesson) {
    if (!lesson && !lesson_) return;
    const int before = step_;
    lesson_ = std::move(lesson);
    step_ = -1;
    phase_ = Phase::Revealed;
    record_ = last_ = {};
    table_ = kWholeClass;
    stepBefore_ = -1;
    if (lesson_) {
        fullScale_ = scaleOf(*lesson_);
        recall();
    }
    Q_EMIT lessonChanged();
    if (before >= 0) Q_EMIT stepChanged(before);
    Q_EMIT changed();
}

bool LessonRun::isVeiled() const { return isRunning() && present().ask && phase_ < Phase::Revealed; }

void LessonRun::next() {
    if (!lesson_) return;
    if (!isRunning()) return goTo(0);
    const bool hasIdea = present().ask && present().ask->wrong;
    if (phase_ < Phase::Revealed || (phase_ == Phase::Revealed && hasIdea)) {
        phase_ = static_cast<Phase>(static_cast<int>(phase_) + 1);
        Q_EMIT changed();
        return;
    }
    if (step_ + 1 < lesson_->stepCount()) goTo(step_ + 1);
}

bool LessonRun::isAtEnd() const {
    if (!isRunning() || step_ + 1 < lesson_->stepCount()) return false;
    const bool hasIdea = present().ask && present().ask->wrong;
    return phase_ >= (hasIdea ? Phase::WrongIdea : Phase::Revealed);
}

void LessonRun::previous() {
    if (!isRunning()) return;
    if (present().ask && phase_ > Phase::Vote) {
        phase_ = static_cast<Phase>(static_cast<int>(phase_) - 1);
        Q_EMIT changed();
        return;
    }
    if (step_ > 0) bring(step_ - 1, Phase::Revealed);
}

void LessonRun::goTo(int step) {
    if (!lesson_ || step < 0 || step >= lesson_->stepCount()) return;
    const LessonStep& there = lesson_->steps[static_cast<std::size_t>(step)];
    bring(step, there.ask ? Phase::Vote : Phase::Revealed);
}

/// One edit brings the table there, whatever hands did to it meanwhile.
void LessonRun::bring(int step, Phase phase) {
    Q_EMIT aboutToMove();
    const int before = std::exchange(step_, step);
    phase_ = phase;
    const Situation there = situationOf(*lesson_, step);
    const Edit edit = editBetween(*document_.bench(), *there.bench, "Step " + std::to_string(step + 1));
    const bool wasSaved = !document_.isModified();
    live_.releaseAll();
    if (!edit.operations.empty()) {
        if (const auto refusal = document_.push(edit)) Q_EMIT document_.refused(*refusal);
        if (wasSaved) document_.markSaved();  // the lesson's own steps are nothing to be lost
    }
    holdOnly({there.inputs.held.begin(), there.inputs.held.end()});
    keep();
    Q_EMIT stepChanged(before);
    Q_EMIT changed();
}

void LessonRun::holdOnly(const std::vector<std::string>& ids) {
    for (const std::string& id : ids) live_.setHeld(id, true);
}

void LessonRun::end() {
    if (!isRunning()) return;
    const int before = std::exchange(step_, -1);
    phase_ = Phase::Revealed;
    live_.releaseAll();
    Q_EMIT stepChanged(before);
    Q_EMIT changed();
}

const Vote* LessonRun::voteIn(bool second) const {
    const auto found = record_.votes.find(step_);
    return !isRunning() || found == record_.votes.end() ? nullptr : &found->second[second ? 1 : 0];
}

int LessonRun::handsIn(bool second, int answer) const {
    const Vote* vote = voteIn(second);
    return vote ? vote->total(answer) : -1;
}

int LessonRun::handsOf(int table, int answer) const {
    const Vote* vote = voteIn(phase_ >= Phase::VoteAgain);
    return vote ? vote->of(table, answer) : -1;
}

bool LessonRun::isCounted(int table) const {
    const Vote* vote = voteIn(phase_ >= Phase::VoteAgain);
    return vote && vote->hands().contains(table);
}

void LessonRun::setTable(int table) {
    if (table < kWholeClass || table > kTables || table == table_) return;
    table_ = table;
    Q_EMIT changed();
}

void LessonRun::setHands(int answer, int count) {
    if (!isRunning() || !present().ask || answer < 0 || answer >= static_cast<int>(present().ask->answers.size()))
        return;
    record_.votes[step_][phase_ >= Phase::VoteAgain ? 1 : 0].set(table_, answer, std::clamp(count, 0, kMostHands));
    keep();
    Q_EMIT changed();
}

void LessonRun::setTicked(int table, bool ticked) {
    if (!isRunning() || ticked == isTicked(table)) return;
    if (ticked)
        record_.looked.insert({step_, table});
    else
        record_.looked.erase({step_, table});
    keep();
    Q_EMIT changed();
}

/// A lesson is given all the same where nothing can be kept.
void LessonRun::keep() {
    record_.lesson = lesson_->title;
    record_.step = step_;
    record_.paper = lesson_->paper;
    QDir().mkpath(folder_);
    const std::string text = writeClassRecord(record_);
    for (const QString& path : {recordPath(), lastRecordPath()})
        (void)writeFileAtomically(path.toStdString(), text, false).ok();
}

/// Of what was kept only what the lesson still asks and looks at.
void LessonRun::recall() {
    record_ = readRecord(recordPath());
    stepBefore_ = record_.step < lesson_->stepCount() ? record_.step : -1;
    std::erase_if(record_.votes, [&](const auto& vote) {
        return vote.first >= lesson_->stepCount() || !lesson_->steps[static_cast<std::size_t>(vote.first)].ask;
    });
    last_ = readRecord(lastRecordPath());
    if (last_.lesson == lesson_->title) last_ = {};
}

}  // namespace tiepoint::ui
