#include "ui/document/autosave.h"

#include "core/bench/bench_file.h"

#include <spdlog/spdlog.h>

#include <QDir>
#include <QElapsedTimer>
#include <QFile>
#include <QSaveFile>
#include <QUuid>

#include <algorithm>

namespace tiepoint::ui {
namespace {

constexpr int kDelayMs = 1500;  // long enough to gather a burst of edits, short enough to lose little
constexpr double kNanosecondsPerMs = 1e6;
const QString kCopySuffix = QStringLiteral(".bench.json");
const QString kSourceSuffix = QStringLiteral(".source");
const QString kLockSuffix = QStringLiteral(".lock");

QString beside(const QString& copyPath, const QString& suffix) { return copyPath.chopped(kCopySuffix.size()) + suffix; }

/// Where the copy came from, so that recovered work goes back to its own file.
void writeSource(const QString& copyPath, const QString& sourcePath) {
    QSaveFile file(beside(copyPath, kSourceSuffix));
    if (!file.open(QIODevice::WriteOnly)) return;
    file.write(sourcePath.toUtf8());
    file.commit();
}

QString readSource(const QString& copyPath) {
    QFile file(beside(copyPath, kSourceSuffix));
    return file.open(QIODevice::ReadOnly) ? QString::fromUtf8(file.readAll()) : QString();
}

void removeCopy(const QString& copyPath) {
    QFile::remove(copyPath);
    QFile::remove(beside(copyPath, kSourceSuffix));
}

/// Whether the program that wrote the copy still runs: its lock is held.
bool isInUse(const QString& copyPath) {
    QLockFile lock(beside(copyPath, kLockSuffix));
    lock.setStaleLockTime(0);
    if (!lock.tryLock()) return true;
    lock.unlock();
    return false;
}

}  // namespace

Autosave::Autosave(BenchDocument& document, const QString& folder, QObject* parent)
    : QObject(parent), document_(document), folder_(folder), worker_(new QObject) {
    copyPath_ = folder_ + QLatin1Char('/') + QUuid::createUuid().toString(QUuid::WithoutBraces) + kCopySuffix;
    worker_->moveToThread(&thread_);
    connect(&thread_, &QThread::finished, worker_, &QObject::deleteLater);
    thread_.start(QThread::LowPriority);
    timer_.setSingleShot(true);
    timer_.setInterval(kDelayMs);
    connect(&timer_, &QTimer::timeout, this, &Autosave::hand);
    connect(&document_, &BenchDocument::benchChanged, this, &Autosave::schedule);
    connect(&document_, &BenchDocument::fileChanged, this, [this] {
        if (document_.isModified()) schedule();
        else discard();
    });
}

Autosave::~Autosave() {
    thread_.quit();
    thread_.wait();  // queued jobs run first: quit is an event behind them
    if (lock_) lock_->unlock();
}

void Autosave::schedule() {
    if (document_.isModified() && !timer_.isActive()) timer_.start();
}

bool Autosave::claimFolder() {
    if (lock_) return true;
    if (!QDir().mkpath(folder_)) return false;
    auto lock = std::make_unique<QLockFile>(beside(copyPath_, kLockSuffix));
    lock->setStaleLockTime(0);  // only the death of this program makes it stale
    if (!lock->tryLock()) return false;
    lock_ = std::move(lock);
    return true;
}

void Autosave::hand() {
    if (!document_.isModified()) return;
    QElapsedTimer clock;
    clock.start();
    if (!claimFolder()) {
        if (!complained_) Q_EMIT failed(QStringLiteral("Unsaved work can't be kept safe: %1 can't be written.").arg(folder_));
        complained_ = true;
        return;
    }
    const auto job = [bench = document_.bench(), path = copyPath_, source = document_.filePath(), this] {
        writeSource(path, source);
        const auto written = writeBenchFile(*bench, path.toStdString());
        if (written) return;
        const QString why = QString::fromStdString(written.error().message);
        QMetaObject::invokeMethod(this, [this, why] {
            if (!complained_) Q_EMIT failed(QStringLiteral("Unsaved work can't be kept safe: ") + why);
            complained_ = true;
        });
    };
    QMetaObject::invokeMethod(worker_, job, Qt::QueuedConnection);
    const double ms = static_cast<double>(clock.nsecsElapsed()) / kNanosecondsPerMs;
    worstMs_ = std::max(worstMs_, ms);
    spdlog::debug("autosave: {:.3f} ms of the window's thread", ms);
}

void Autosave::discard() {
    timer_.stop();
    if (!lock_) return;
    QMetaObject::invokeMethod(worker_, [path = copyPath_] { removeCopy(path); }, Qt::QueuedConnection);
}

void Autosave::finish() {
    if (timer_.isActive()) {
        timer_.stop();
        hand();
    }
    QMetaObject::invokeMethod(worker_, [] {}, Qt::BlockingQueuedConnection);
}

std::vector<Recovery> Autosave::findRecoveries(const QString& folder) {
    std::vector<Recovery> found;
    const QFileInfoList copies = QDir(folder).entryInfoList({QLatin1Char('*') + kCopySuffix}, QDir::Files, QDir::Time);
    for (const QFileInfo& copy : copies)
        if (!isInUse(copy.filePath())) found.push_back({copy.filePath(), readSource(copy.filePath()), copy.lastModified()});
    return found;
}

void Autosave::forget(const Recovery& recovery) { removeCopy(recovery.copyPath); }

QString stateFolder() {
    const QString state = qEnvironmentVariable("XDG_STATE_HOME");
    if (QDir::isAbsolutePath(state)) return state + QStringLiteral("/tiepoint");
    return QDir::homePath() + QStringLiteral("/.local/state/tiepoint");
}

}  // namespace tiepoint::ui
