#include "ui/document/file_guard.h"

#include <QCryptographicHash>
#include <QDir>
#include <QFile>
#include <QFileInfo>

namespace tiepoint::ui {
namespace {

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
    connect(&document_, &BenchDocument::fileChanged, this, &FileGuard::follow);
    connect(&watcher_, &QFileSystemWatcher::fileChanged, this, &FileGuard::look);
}

QByteArray FileGuard::stampOf(const QString& path) {
    QFile file(path);
    if (!file.open(QIODevice::ReadOnly)) return {};
    QCryptographicHash hash(QCryptographicHash::Sha256);
    return hash.addData(&file) ? hash.result() : QByteArray();
}

void FileGuard::follow() {
    const QString path = document_.filePath();
    if (path == path_) return;
    path_ = path;
    mark_.reset();
    elsewhere_ = false;
    if (!watcher_.files().isEmpty()) watcher_.removePaths(watcher_.files());
    known_ = told_ = {};
    if (path_.isEmpty()) return;
    remember();
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

void FileGuard::remember() {
    known_ = told_ = stampOf(path_);
    if (!path_.isEmpty() && QFile::exists(path_))
        watcher_.addPath(path_);  // a file put in another's place is a new one to the system
}

bool FileGuard::isChanged() const {
    if (path_.isEmpty() || known_.isEmpty()) return false;
    const QByteArray now = stampOf(path_);
    return !now.isEmpty() && now != known_;
}

void FileGuard::look() {
    if (path_.isEmpty()) return;
    if (QFile::exists(path_)) watcher_.addPath(path_);
    const QByteArray now = stampOf(path_);
    if (now.isEmpty() || now == known_ || now == told_) return;
    told_ = now;
    Q_EMIT changedOnDisk(path_);
}

}  // namespace tiepoint::ui
