#pragma once
// The document of a window: the current bench, its revision, its undo stack and its file. Lives in the window's thread.

#include "core/edit/edit.h"

#include <QByteArray>
#include <QObject>
#include <QString>
#include <QUndoStack>

#include <memory>
#include <optional>

namespace tiepoint::ui {

class EditCommand;

class BenchDocument : public QObject {
    Q_OBJECT
public:
    explicit BenchDocument(QObject* parent = nullptr);
    ~BenchDocument() override;

    std::shared_ptr<const Bench> bench() const { return bench_; }
    quint64 revision() const { return revision_; }
    /// Counts the benches that were put on the table: who comes back later, such as with an answer, sees whether it is still the same.
    quint64 opening() const { return opening_; }
    QUndoStack& undoStack() { return undo_; }
    /// The steps of the history, done and undone; each is an EditCommand.
    const EditCommand& step(int index) const;
    QString filePath() const { return filePath_; }
    /// A digest of what stood in the file when it was read or written last; empty where that isn't known or there was none.
    QByteArray fileDigest() const { return fileDigest_; }
    void setFileDigest(const QByteArray& digest) { fileDigest_ = digest; }
    bool isModified() const { return !undo_.isClean(); }

    /// Applies an edit as one undo step. Returns why it was refused, or nothing.
    /// Steps with the same `gesture` (see newGesture), one after the other, become one undo step: each of them
    /// must put new content in place of the same objects.
    std::optional<QString> push(const Edit& edit, int gesture = -1);
    /// A number for the steps of a gesture that changes the bench while it lasts, such as turning a knob.
    int newGesture();
    /// Puts another bench in place of this one; clears the undo stack.
    void reset(Bench bench, const QString& filePath);
    void setFilePath(const QString& filePath);
    void markSaved();
    /// What is on the table stands in no file any more, whatever is undone.
    void markUnsaved();
    /// Changes how much is revealed, and the lock, apart from the history: nothing that is undone or done again opens a lock.
    std::optional<QString> setDisclosure(const Disclosure& disclosure);
    /// Keeps with the bench which views are shown. Looking is no edit: there is nothing to undo, the revision stays, and nobody is asked
    /// about unsaved changes because of it; what was shown last goes into the file with the next save.
    void keepViews(const Views& views);

Q_SIGNALS:
    void benchReplaced();  ///< another bench is about to come in place of this one; benchChanged follows
    void benchChanged();   ///< a new revision
    void fileChanged();    ///< the path or the modified state
    void refused(const QString& why);

private:
    friend class EditCommand;
    void adopt(Bench bench);
    /// A step of the history can't be taken, so that the bench stays behind it (it is done) or before it. Until the stack stands there too
    /// no other step is applied.
    void stickHistory(const QUndoCommand& step, bool isDone, const QString& why);
    bool isHistoryStuck() const { return stuck_.has_value(); }
    void freeHistory();

    std::shared_ptr<const Bench> bench_;
    quint64 revision_ = 0, opening_ = 0;
    QUndoStack undo_;
    struct Stuck {
        int index = 0;  ///< where in the stack the bench stands
        QString line;   ///< what to say of it
    };
    std::optional<Stuck> stuck_;
    QString filePath_;
    QByteArray fileDigest_;
    int gestures_ = 0;
};

}  // namespace tiepoint::ui
