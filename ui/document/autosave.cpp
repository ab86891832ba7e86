#include "ui/document/autosave.h"

#include "core/base/file_io.h"
#include "core/bench/bench_file.h"

#include <QDir>
#include <QElapsedTimer>
#include <QFile>
#include <QFileInfo>
#include <QLockFile>
#include <QMutex>
#include <QSaveFile>
#include <QUuid>

#include <spdlog/spdlog.h>

#include <atomic>
#include <memory>
#include <optional>

namespace tiepoint::ui {
namespace {

constexpr std::size_t kUsualSize =
    2000;  // boards, parts and jumpers of a bench that is written within a millisecond or two
constexpr double kRestShare =
    3;  // of the time that a copy took: the disk is the worker's a quarter of the time at most
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

/// Does the work on the disk. Lives in the worker thread; its calls take turns, so that both threads may make them.
class Autosave::Writer : public QObject {
public:
    explicit Writer(const QString& copyPath) : copyPath_(copyPath) {}
    ~Writer() override {
        if (lock_) lock_->unlock();
    }

    /// Returns why the copy couldn't be written, or nothing.
    std::optional<QString> write(const Bench& bench, const QString& sourcePath, bool durable) {
        const QMutexLocker turn(&turns_);
        if (!claim()) return QFileInfo(copyPath_).path() + QStringLiteral(" can't be written.");
        if (sourcePath != source_) writeSource(copyPath_, sourcePath);
        source_ = sourcePath;
        const auto written = writeFileAtomically(copyPath_.toStdString(), writeBench(bench), durable);
        return written ? std::nullopt : std::optional(QString::fromStdString(written.error().message));
    }
    void remove() {
        const QMutexLocker turn(&turns_);
        if (lock_) removeCopy(copyPath_);
        source_.reset();
    }
    /// Whether a wait for the disk must be queued: one that is queued already serves what is written meanwhile.
    bool askToSync() { return !syncAsked_.exchange(true); }
    void sync() {
        syncAsked_ = false;
        syncToDisk(copyPath_.toStdString());
    }

private:
    /// The lock says that the program which wrote the copy still runs; only its death makes the lock stale.
    bool claim() {
        if (lock_) return true;
        if (!QDir().mkpath(QFileInfo(copyPath_).path())) return false;
        auto lock = std::make_unique<QLockFile>(beside(copyPath_, kLockSuffix));
        lock->setStaleLockTime(0);
        if (!lock->tryLock()) return false;
        lock_ = std::move(lock);
        return true;
    }

    QString copyPath_;
    QMutex turns_;
    std::atomic<bool> syncAsked_ = false;
    std::unique_ptr<QLockFile> lock_;
    std::optional<QString> source_;  ///< as it was written
};

Autosave::Autosave(BenchDocument& document, const QString& folder, QObject* parent)
    : QObject(parent),
      document_(document),
      copyPath_(folder + QLatin1Char('/') + QUuid::createUuid().toString(QUuid::WithoutBraces) + kCopySuffix),
      writer_(new Writer(copyPath_)) {
    writer_->moveToThread(&thread_);
    connect(&thread_, &QThread::finished, writer_, &QObject::deleteLater);
    thread_.start(QThread::LowPriority);
    timer_.setSingleShot(true);
    connect(&timer_, &QTimer::timeout, this, [this] {
        if (newer_) hand();
    });
    connect(&document_, &BenchDocument::benchChanged, this, &Autosave::schedule);
    connect(&document_, &BenchDocument::fileChanged, this, [this] {
        if (document_.isModified())
            schedule();
        else
            discard();
    });
}

Autosave::~Autosave() {
    QMetaObject::invokeMethod(
        writer_, [] {}, Qt::BlockingQueuedConnection);  // everything handed over gets written
    thread_.quit();
    thread_.wait();
}

void Autosave::schedule() {
    if (!document_.isModified()) return;
    if (writing_ || timer_.isActive())
        newer_ = true;
    else
        hand();
}

void Autosave::written(double ms) {
    writing_ = false;
    timer_.start(static_cast<int>(kRestShare * ms));
}

void Autosave::hand() {
    newer_ = false;
    if (!document_.isModified()) return;
    QElapsedTimer clock;
    clock.start();
    const Bench& bench = *document_.bench();
    if (bench.boards.size() + bench.parts.size() + bench.jumpers.size() <= kUsualSize)
        handUsual();
    else
        handLarge();
    lastMs_ = static_cast<double>(clock.nsecsElapsed()) / kNanosecondsPerMs;
    spdlog::debug("autosave: {:.3f} ms of the window's thread", lastMs_);
}

void Autosave::handUsual() {
    if (const auto why = writer_->write(*document_.bench(), document_.filePath(), false)) complain(*why);
    if (writer_->askToSync())
        QMetaObject::invokeMethod(
            writer_, [this] { writer_->sync(); }, Qt::QueuedConnection);
}

void Autosave::handLarge() {
    writing_ = true;
    const auto job = [this, bench = document_.bench(), source = document_.filePath()] {
        QElapsedTimer writing;
        writing.start();
        const auto why = writer_->write(*bench, source, true);
        const double ms = static_cast<double>(writing.nsecsElapsed()) / kNanosecondsPerMs;
        QMetaObject::invokeMethod(
            this, [this, ms] { written(ms); }, Qt::QueuedConnection);
        if (why)
            QMetaObject::invokeMethod(
                this, [this, why] { complain(*why); }, Qt::QueuedConnection);
    };
    QMetaObject::invokeMethod(writer_, job, Qt::QueuedConnection);
}

void Autosave::complain(const QString& why) {
    if (complained_) return;
    complained_ = true;
    Q_EMIT failed(QStringLiteral("Unsaved work can't be kept safe: ") + why);
}

void Autosave::discard() {
    newer_ = false;
    // Behind a large copy that is under way the removal waits its turn; else nothing that is written after it may fall to it.
    if (writing_)
        QMetaObject::invokeMethod(
            writer_, [this] { writer_->remove(); }, Qt::QueuedConnection);
    else
        writer_->remove();
}

void Autosave::finish() {
    if (newer_) hand();
    QMetaObject::invokeMethod(
        writer_, [] {}, Qt::BlockingQueuedConnection);
}

std::vector<Recovery> Autosave::findRecoveries(const QString& folder) {
    std::vector<Recovery> found;
    const QFileInfoList copies = QDir(folder).entryInfoList({QLatin1Char('*') + kCopySuffix}, QDir::Files, QDir::Time);
    for (const QFileInfo& copy : copies)
        if (!isInUse(copy.filePath()))
            found.push_back({copy.filePath(), readSource(copy.filePath()), copy.lastModified()});
    return found;
}

void Autosave::forget(const Recovery& recovery) { removeCopy(recovery.copyPath); }

QString stateFolder() {
    const QString state = qEnvironmentVariable("XDG_STATE_HOME");
    if (QDir::isAbsolutePath(state)) return state + QStringLiteral("/tiepoint");
    return QDir::homePath() + QStringLiteral("/.local/state/tiepoint");
}

}  // namespace tiepoint::ui
