#pragma once
// Keeps the document's file from being lost: says when another window has it open too, when it was changed or taken away on the disk, and
// knows whether what stands there is still what was read or written last. Window's thread only.

#include "ui/document/bench_document.h"

#include <QByteArray>
#include <QFileSystemWatcher>
#include <QLockFile>
#include <QObject>
#include <QTimer>

#include <memory>
#include <string_view>

namespace tiepoint::ui {

class FileGuard : public QObject {
    Q_OBJECT
public:
    static constexpr int kPatienceMs = 400;  ///< a file that is gone for less is being put in place anew

    /// `folder` holds a mark for each open file; made when first needed. Beside the files themselves nothing is left.
    FileGuard(BenchDocument& document, const QString& folder, QObject* parent);

    /// The document knows of its file what this is the digest of: call after reading and writing it. Not the file is looked at but what was
    /// read or written, so that a change that came right behind it isn't missed.
    void remember(const QByteArray& digest);
    /// Whether the file on the disk is another one than was read or written last. A file that is gone has not changed.
    bool isChanged() const;
    /// Whether the file that was read or written is there no more.
    bool isGone() const;
    bool isOpenElsewhere() const { return elsewhere_; }
    /// Says again what may have gone unheard: that the file has changed.
    void look();

    /// A digest of what stands in a file; empty where there is none.
    static QByteArray digestOfFile(const QString& path);
    static QByteArray digestOf(std::string_view text);

Q_SIGNALS:
    void openElsewhere(const QString& path);
    void changedOnDisk(const QString& path);  ///< once for each change
    void takenAway(const QString& path);      ///< the file is gone: the document counts as unsaved from now on

private:
    void follow();
    void lookAgain();
    void watch();

    BenchDocument& document_;
    QString folder_, path_;
    quint64 opening_ = 0;
    std::unique_ptr<QLockFile> mark_;
    bool elsewhere_ = false;
    QByteArray told_;
    QFileSystemWatcher watcher_;
    QTimer gone_;
};

}  // namespace tiepoint::ui
