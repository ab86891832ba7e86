#include "ui/document/recovery.h"

#include "core/base/file_io.h"

#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QLockFile>
#include <QRegularExpression>
#include <QUuid>

namespace tiepoint::ui {
namespace {

const QString kCopySuffix = QStringLiteral(".bench.json");
const QString kSourceSuffix = QStringLiteral(".source");
const QString kLockSuffix = QStringLiteral(".lock");
constexpr std::size_t kLargestSourceBytes = 1 << 20;

QString beside(const QString& copyPath, const QString& suffix) { return copyPath.chopped(kCopySuffix.size()) + suffix; }

/// Whether the program that wrote the copy still runs: its lock is held.
bool isInUse(const QString& copyPath) {
    QLockFile lock(lockPathOf(copyPath));
    lock.setStaleLockTime(0);
    if (!lock.tryLock()) return true;
    lock.unlock();
    return false;
}

/// What lies beside a copy: "digest: HEX" in a line, or "digest:" where there was no file, then the path. Without that line it is the
/// path alone.
void readSource(Recovery& recovery) {
    const auto read = readFile(beside(recovery.copyPath, kSourceSuffix).toStdString(), kLargestSourceBytes);
    if (!read) return;
    const QString text = QString::fromStdString(*read);
    static const QRegularExpression kWithDigest(QStringLiteral("^digest: ?([0-9a-f]*)\n"));
    const auto match = kWithDigest.match(text);
    if (match.hasMatch()) recovery.sourceDigest = QByteArray::fromHex(match.captured(1).toLatin1());
    recovery.sourcePath = text.mid(match.capturedLength());
}

}  // namespace

QString newCopyPath(const QString& folder) {
    return folder + QLatin1Char('/') + QUuid::createUuid().toString(QUuid::WithoutBraces) + kCopySuffix;
}

QString lockPathOf(const QString& copyPath) { return beside(copyPath, kLockSuffix); }

std::optional<QString> writeSource(const QString& copyPath, const CopySource& source) {
    const QString text = QStringLiteral("digest: %1\n").arg(QString::fromLatin1(source.digest.toHex())) + source.path;
    const auto written = writeFileAtomically(beside(copyPath, kSourceSuffix).toStdString(), text.toStdString(), false);
    return written ? std::nullopt : std::optional(QString::fromStdString(written.error().message));
}

std::vector<Recovery> findRecoveries(const QString& folder) {
    std::vector<Recovery> found;
    const QFileInfoList copies = QDir(folder).entryInfoList({QLatin1Char('*') + kCopySuffix}, QDir::Files, QDir::Time);
    for (const QFileInfo& copy : copies) {
        if (isInUse(copy.filePath())) continue;
        Recovery recovery{copy.filePath(), {}, copy.lastModified(), std::nullopt};
        readSource(recovery);
        found.push_back(std::move(recovery));
    }
    return found;
}

void removeCopy(const QString& copyPath) {
    QFile::remove(copyPath);
    QFile::remove(beside(copyPath, kSourceSuffix));
}

QString stateFolder() {
    const QString state = qEnvironmentVariable("XDG_STATE_HOME");
    if (QDir::isAbsolutePath(state)) return state + QStringLiteral("/tiepoint");
    return QDir::homePath() + QStringLiteral("/.local/state/tiepoint");
}

}  // namespace tiepoint::ui
