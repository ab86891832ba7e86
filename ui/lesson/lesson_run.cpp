#include "ui/lesson/lesson_run.h"

#include <QSettings>
#include <QStringList>

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

QString settingsKey(const Lesson& lesson) {
    QString name = QString::fromStdString(lesson.title);
    return QStringLiteral("lessons/") + name.replace(QLatin1Char('/'), QLatin1Char('-'));
}

}  // namespace

LessonRun::LessonRun(BenchDocument& document, LiveBench& live, QObject* parent)
    : QObject(parent),
      document_(document),
      live_(live) {}

void LessonRun::setLesson(std::shared_ptr<const Lesson> lesson) {
    if (!lesson && !lesson_) return;
    const int before = step_;
    lesson_ = std::move(lesson);
    step_ = -1;
    phase_ = Phase::Revealed;
    votes_.clear();
    tables_.clear();
    if (lesson_) {
        votes_.resize(lesson_->steps.size());
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

int LessonRun::handsIn(bool second, int answer) const {
    if (!isRunning()) return -1;
    const std::vector<int>& counted = votes_[static_cast<std::size_t>(step_)][second ? 1 : 0];
    return answer < static_cast<int>(counted.size()) ? counted[static_cast<std::size_t>(answer)] : -1;
}

void LessonRun::setHands(int answer, int count) {
    if (!isRunning() || !present().ask || answer < 0 || answer >= static_cast<int>(present().ask->answers.size()))
        return;
    std::vector<int>& counted = votes_[static_cast<std::size_t>(step_)][phase_ >= Phase::VoteAgain ? 1 : 0];
    counted.resize(present().ask->answers.size(), -1);
    counted[static_cast<std::size_t>(answer)] = std::clamp(count, 0, kMostHands);
    keep();
    Q_EMIT changed();
}

void LessonRun::setTicked(int table, bool ticked) {
    if (!isRunning() || ticked == isTicked(table)) return;
    if (ticked)
        tables_.insert({step_, table});
    else
        tables_.erase({step_, table});
    keep();
    Q_EMIT changed();
}

/// Votes and ticks are kept by step and table, without names.
void LessonRun::keep() const {
    QStringList votes, tables;
    for (std::size_t step = 0; step < votes_.size(); ++step) {
        for (std::size_t second = 0; second < 2; ++second) {
            if (votes_[step][second].empty()) continue;
            QStringList counts;
            for (const int count : votes_[step][second]) counts << QString::number(count);
            votes << QStringLiteral("%1.%2=%3").arg(step).arg(second).arg(counts.join(QLatin1Char(' ')));
        }
    }
    for (const auto& [step, table] : tables_) tables << QStringLiteral("%1.%2").arg(step).arg(table);
    QSettings settings;
    settings.beginGroup(settingsKey(*lesson_));
    settings.setValue(QStringLiteral("step"), step_);
    settings.setValue(QStringLiteral("votes"), votes);
    settings.setValue(QStringLiteral("tables"), tables);
}

void LessonRun::recall() {
    QSettings settings;
    settings.beginGroup(settingsKey(*lesson_));
    for (const QString& line : settings.value(QStringLiteral("votes")).toStringList()) {
        const std::size_t step = line.section(QLatin1Char('.'), 0, 0).toUInt();
        const bool second = line.section(QLatin1Char('.'), 1).startsWith(QLatin1Char('1'));
        if (step >= votes_.size() || !lesson_->steps[step].ask) continue;
        std::vector<int>& counted = votes_[step][second ? 1 : 0];
        for (const QString& count : line.section(QLatin1Char('='), 1).split(QLatin1Char(' ')))
            counted.push_back(std::clamp(count.toInt(), -1, kMostHands));
        counted.resize(lesson_->steps[step].ask->answers.size(), -1);
    }
    for (const QString& line : settings.value(QStringLiteral("tables")).toStringList())
        tables_.insert({line.section(QLatin1Char('.'), 0, 0).toInt(), line.section(QLatin1Char('.'), 1).toInt()});
}

}  // namespace tiepoint::ui
