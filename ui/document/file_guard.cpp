#include "ui/document/file_guard.h"

#include <QCryptographicHash>
#include <QDir>
#include <QFile>
#include <QFileInfo>

#include <utility>

namespace tiepoint::ui {
namespace {

constexpr auto kFileDigest = QCryptographicHash::Sha256;
const QByteArray kUnreadable = QByteArrayLiteral("unreadable");  ///< in place of a digest

QString markFor(const QString& folder, const QString& path) {
    // Two ways to one file, through a link, are one file.
    const QString real = QFileInfo(path).canonicalFilePath();
    const QByteArray name =
        QCryptographicHash::hash((real.isEmpty() ? path : real).toUtf8(), QCryptographicHash::Sha256).toHex();
    return folder + QLatin1Char('/') + QString::fromLatin1(name.left(32)) + QStringLiteral(".open");
}

}  // namespace

FileGuard::FileGuard(BenchDocument& document, const QString& folder, QObject* parent)
    : QObject(parent),
      document_(document),
      folder_(folder) {
    gone_.setSingleShot(true);
    gone_.setInterval(kPatienceMs);
    connect(&document_, &BenchDocument::fileChanged, this, &FileGuard::follow);
    connect(&watcher_, &QFileSystemWatcher::fileChanged, this, &FileGuard::look);
    connect(&watcher_, &QFileSystemWatcher::directoryChanged, this, &FileGuard::look);
    connect(&gone_, &QTimer::timeout, this, &FileGuard::lookAgain);
}

QByteArray FileGuard::digestOfFile(const QString& path) {
    const QFileInfo info(path);
    if (!info.exists()) return {};
    QFile file(path);
    QCryptographicHash hash(kFileDigest);
    // What is no file, such as a pipe, isn't opened: it would be waited for.
    if (!info.isFile() || !file.open(QIODevice::ReadOnly) || !hash.addData(&file)) return kUnreadable;
    return hash.result();
}

QByteArray FileGuard::digestOf(std::string_view text) {
    return QCryptographicHash::hash(QByteArray::fromRawData(text.data(), static_cast<qsizetype>(text.size())),
                                    kFileDigest);
}

void FileGuard::follow() {
    const QString path = document_.filePath();
    if (path == path_) {
        if (std::exchange(opening_, document_.opening()) != document_.opening()) remember(digestOfFile(path_));
        return;
    }
    path_ = path;
    opening_ = document_.opening();
    mark_.reset();
    elsewhere_ = false;
    gone_.stop();
    if (const auto watched = watcher_.files() + watcher_.directories(); !watched.isEmpty())
        watcher_.removePaths(watched);
    told_.clear();
    if (path_.isEmpty()) return;
    remember(digestOfFile(path_));
    QDir().mkpath(folder_);
    auto mark = std::make_unique<QLockFile>(markFor(folder_, path_));
    mark->setStaleLockTime(0);  // only the death of its program makes a mark stale
    if (mark->tryLock()) {
        mark_ = std::move(mark);
        return;
    }
    elsewhere_ = mark->error() == QLockFile::LockFailedError;
    if (elsewhere_) Q_EMIT openElsewhere(path_);
}

/// A file put in another's place is a new one to the system; one that is gone comes back in its folder.
void FileGuard::watch() {
    const QString folder = QFileInfo(path_).path();
    const bool there = QFile::exists(path_), folderWatched = watcher_.directories().contains(folder);
    if (there) watcher_.addPath(path_);
    if (there && folderWatched) watcher_.removePath(folder);
    if (!there && !folderWatched) watcher_.addPath(folder);
}

void FileGuard::remember(const QByteArray& digest) {
    document_.setFileDigest(digest);
    told_ = digest;
    if (!path_.isEmpty()) watch();
}

bool FileGuard::isGone() const {
    return !path_.isEmpty() && !document_.fileDigest().isEmpty() && !QFile::exists(path_);
}

bool FileGuard::isChanged() const {
    return !path_.isEmpty() && QFile::exists(path_) && digestOfFile(path_) != document_.fileDigest();
}

void FileGuard::look() {
    if (path_.isEmpty()) return;
    watch();
    if (isGone() && !gone_.isActive()) gone_.start();
    if (!QFile::exists(path_)) return;
    gone_.stop();
    const QByteArray now = digestOfFile(path_);
    if (now == document_.fileDigest() || now == told_) return;
    told_ = now;
    Q_EMIT changedOnDisk(path_);
}

void FileGuard::lookAgain() {
    if (!isGone()) return look();
    document_.setFileDigest({});
    told_.clear();
    document_.markUnsaved();
    Q_EMIT takenAway(path_);
}

}  // namespace tiepoint::ui
