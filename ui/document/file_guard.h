#pragma once
// Keeps the document's file from being lost: says when another window has it open too, and knows whether what stands on the disk is
// still what was read or written last. Window's thread only.

#include "ui/document/bench_document.h"

#include <QFileSystemWatcher>
#include <QLockFile>
#include <QObject>

#include <memory>

namespace tiepoint::ui {

class FileGuard : public QObject {
    Q_OBJECT
public:
    /// `folder` holds a mark for each open file; made when first needed. Beside the files themselves nothing is left.
    FileGuard(BenchDocument& document, const QString& folder, QObject* parent);

    /// The document's file now holds what the document knows: call after reading and writing it.
    void remember();
    /// Whether the file on the disk is another one than was read or written last. A file that is gone has not changed.
    bool isChanged() const;
    bool isOpenElsewhere() const { return elsewhere_; }

Q_SIGNALS:
    void openElsewhere(const QString& path);
    void changedOnDisk(const QString& path);  ///< once for each change

private:
    void follow();
    void look();
    static QByteArray stampOf(const QString& path);

    BenchDocument& document_;
    QString folder_, path_;
    std::unique_ptr<QLockFile> mark_;
    bool elsewhere_ = false;
    QByteArray known_, told_;
    QFileSystemWatcher watcher_;
};

}  // namespace tiepoint::ui
