#pragma once
// Copies of unsaved work on the disk: how one is named, what lies beside it, and which of them a program that is gone left behind.

#include <QByteArray>
#include <QDateTime>
#include <QString>

#include <optional>
#include <vector>

namespace tiepoint::ui {

/// Work that a program which is gone left behind.
struct Recovery {
    QString copyPath;    ///< the copy of the bench
    QString sourcePath;  ///< the file it was a later state of; empty if it had none
    QDateTime savedAt;
    std::optional<QByteArray>
        sourceDigest;  ///< of what stood in that file then; empty: there was none; nothing: not known
};

/// Where a copy came from, so that recovered work goes back to its own file, and is not put in place of what others wrote there since.
struct CopySource {
    QString path;
    QByteArray digest;  ///< of what stood in it when it was read or written last
    friend bool operator==(const CopySource&, const CopySource&) = default;
};

/// A fresh name for a copy in a folder.
QString newCopyPath(const QString& folder);
/// The file whose lock says that the program which wrote a copy still runs.
QString lockPathOf(const QString& copyPath);
/// Writes beside a copy where it came from. Returns why it couldn't, or nothing.
std::optional<QString> writeSource(const QString& copyPath, const CopySource& source);

/// Copies in the folder whose program is gone, the newest first.
std::vector<Recovery> findRecoveries(const QString& folder);
/// Takes a copy away, with what lies beside it.
void removeCopy(const QString& copyPath);

/// Where the program keeps what it must remember between runs: tiepoint in $XDG_STATE_HOME, else in ~/.local/state.
QString stateFolder();

}  // namespace tiepoint::ui
