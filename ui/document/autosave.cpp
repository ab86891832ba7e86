#include "ui/document/autosave.h"

#include "core/base/file_io.h"
#include "core/bench/bench_file.h"

#include <QDir>
#include <QElapsedTimer>
#include <QFile>
#include <QFileInfo>
#include <QLockFile>
#include <QMutex>

#include <spdlog/spdlog.h>

#include <atomic>
#include <memory>
#include <optional>
#include <utility>

namespace tiepoint::ui {
namespace {

constexpr std::size_t kUsualSize =
    2000;  // boards, parts and jumpers of a bench that is written within a millisecond or two
constexpr double kRestShare =
    3;  // of the time that a copy took: the disk is the worker's a quarter of the time at most
constexpr double kNanosecondsPerMs = 1e6;

}  // namespace

/// Does the work on the disk. Lives in the worker thread; its calls take turns, so that both threads may make them.
class Autosave::Writer : public QObject {
public:
    explicit Writer(const QString& copyPath) : copyPath_(copyPath) {}
    ~Writer() override {
        if (lock_) lock_->unlock();
    }

    /// Returns why the copy couldn't be written, or nothing.
    std::optional<QString> write(const Bench& bench, const CopySource& source, bool durable, quint64 revision) {
        const QMutexLocker turn(&turns_);
        auto why = put(bench, source, durable);
        kept_ = why ? 0 : revision;
        return why;
    }
    void remove() {
        const QMutexLocker turn(&turns_);
        if (lock_) removeCopy(copyPath_);
        source_.reset();
        kept_ = 0;
    }
    /// The revision that the copy holds; 0 where there is none, or none that is whole.
    quint64 kept() const { return kept_; }
    /// Whether a wait for the disk must be queued: one that is queued already serves what is written meanwhile.
    bool askToSync() { return !syncAsked_.exchange(true); }
    void sync() {
        syncAsked_ = false;
        syncToDisk(copyPath_.toStdString());
    }

private:
    std::optional<QString> put(const Bench& bench, const CopySource& source, bool durable) {
        if (!claim()) return QFileInfo(copyPath_).path() + QStringLiteral(" can't be written.");
        if (source != source_) {
            if (auto why = writeSource(copyPath_, source)) return why;
        }
        source_ = source;
        const auto written = writeFileAtomically(copyPath_.toStdString(), writeBench(bench), durable);
        return written ? std::nullopt : std::optional(QString::fromStdString(written.error().message));
    }

    /// The lock says that the program which wrote the copy still runs; only its death makes the lock stale. Where someone took the folder
    /// away meanwhile, everything is made anew.
    bool claim() {
        if (lock_ && QFile::exists(lockPathOf(copyPath_))) return true;
        lock_.reset();
        source_.reset();
        if (!QDir().mkpath(QFileInfo(copyPath_).path())) return false;
        auto lock = std::make_unique<QLockFile>(lockPathOf(copyPath_));
        lock->setStaleLockTime(0);
        if (!lock->tryLock()) return false;
        lock_ = std::move(lock);
        return true;
    }

    QString copyPath_;
    QMutex turns_;
    std::atomic<bool> syncAsked_ = false;
    std::unique_ptr<QLockFile> lock_;
    std::optional<CopySource> source_;  ///< as it was written
    std::atomic<quint64> kept_ = 0;
};

Autosave::Autosave(BenchDocument& document, const QString& folder, QObject* parent)
    : QObject(parent),
      document_(document),
      copyPath_(newCopyPath(folder)),
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
    tell(writer_->write(*document_.bench(), {document_.filePath(), document_.fileDigest()}, false,
                        document_.revision()));
    if (writer_->askToSync())
        QMetaObject::invokeMethod(
            writer_, [this] { writer_->sync(); }, Qt::QueuedConnection);
}

void Autosave::handLarge() {
    writing_ = true;
    const auto job = [this, bench = document_.bench(), revision = document_.revision(),
                      source = CopySource{document_.filePath(), document_.fileDigest()}] {
        QElapsedTimer writing;
        writing.start();
        const auto why = writer_->write(*bench, source, true, revision);
        const double ms = static_cast<double>(writing.nsecsElapsed()) / kNanosecondsPerMs;
        QMetaObject::invokeMethod(
            this,
            [this, ms, why] {
                written(ms);
                tell(why);
            },
            Qt::QueuedConnection);
    };
    QMetaObject::invokeMethod(writer_, job, Qt::QueuedConnection);
}

void Autosave::tell(const std::optional<QString>& why) {
    const bool told = std::exchange(complained_, why.has_value());
    if (why && !told) Q_EMIT failed(QStringLiteral("Unsaved work can't be kept safe: ") + *why);
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

bool Autosave::finish() {
    if (newer_) hand();
    QMetaObject::invokeMethod(
        writer_, [] {}, Qt::BlockingQueuedConnection);
    return writer_->kept() == document_.revision();
}

}  // namespace tiepoint::ui
