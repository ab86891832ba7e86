#pragma once
// What File does: new, open, save, save as, and the questions that stand before something is lost. A bench is loaded aside and put in
// place only when it proved good; a failure is one line and changes nothing. Never runs an event loop of its own.
//
// An answer may come at once or much later. One question stands at a time, and what would ask another is not begun meanwhile. An answer
// counts once; not any more when another bench has come to the table; and where more would be lost than was asked about, the question is
// asked again.

#include "core/course/lesson.h"
#include "ui/document/bench_document.h"
#include "ui/document/file_guard.h"
#include "ui/document/recovery.h"

#include <QObject>
#include <QWidget>

#include <functional>
#include <memory>

namespace tiepoint::ui {

class FileActions : public QObject {
    Q_OBJECT
public:
    enum class Answer { Save, Discard, Cancel };
    /// About a file that someone else changed: put ours in its place, take theirs, or leave both.
    enum class Conflict { Overwrite, Reload, Cancel };
    using GiveConflict = std::function<void(Conflict)>;
    using GivePath = std::function<void(const QString& path)>;  ///< the path chosen, or an empty one
    using GiveAnswer = std::function<void(Answer)>;
    using GiveConsent = std::function<void(bool)>;

    /// How a person is asked, who always answers in the end; tests answer in their place.
    struct Asker {
        std::function<void(const GivePath&)> openPath;
        /// Asks too whether a file of exactly that name may be replaced.
        std::function<void(const QString& suggestion, const GivePath&)> savePath;
        std::function<void(const QString& title, const GiveAnswer&)> unsaved;
        std::function<void(const QString& path, const GiveConflict&)> changed;
        std::function<void(const QString& path, const GiveConsent&)> replace;
    };

    /// `window` is the parent of the dialogues. The guard knows what stands on the disk.
    FileActions(BenchDocument& document, FileGuard& guard, QWidget* window);
    void setAsker(Asker asker) { asker_ = std::move(asker); }

    /// What a new bench has on it; by default the usual board and supply.
    void setNewBench(std::function<Bench()> make) { makeNew_ = std::move(make); }
    /// A lesson that was made in the window, in place of the one it was made from.
    void putLesson(std::shared_ptr<const Lesson> lesson);
    /// Goes on with `then` when the new bench is there.
    void newBench(const std::function<void()>& then = [] {});
    /// The same with a bench of the caller's, which has no file yet.
    void beginWith(Bench bench, const std::function<void()>& then);
    void open();
    /// A bench file, or a picture with a bench inside, which then has no file yet.
    void openFile(const QString& path);
    /// The bytes of such a picture that lie in no file, as dragged from another program.
    void openPicture(const QByteArray& png);
    /// Reads the document's file again, in place of what is on the bench; asks before unsaved changes go.
    void reload();
    /// A bench of the program's own, by its name among the embedded files; gets no path, so that saving asks for one.
    /// `views`: what it is shown in; without, as the bench says.
    void openEmbedded(const QString& name, const std::optional<Views>& views = std::nullopt);
    /// A bench that the program has made: gets no path. Goes on with `then` when it is on the table; not if the person cancels.
    void openMade(const Bench& bench, const std::function<void()>& then);
    /// Unsaved work of a program that is gone: opened as unsaved changes of its own file. Goes on with `then` when it is on the table; not
    /// if the person cancels or the copy can't be read.
    void openCopy(const Recovery& recovery, const std::function<void()>& then);
    void save();
    void saveAs();
    /// Runs `next` once unsaved changes are saved or given up; not at all if the person cancels.
    void whenSafe(const std::function<void()>& next);
    /// Whether something would be lost if the bench went now.
    bool isUnsafe() const { return document_.isModified() || guard_.isGone(); }
    /// The lesson whose start stands on the table, as it was opened; null where a bench was opened. A lesson's file is never written over by a
    /// bench: its bench has no file.
    const std::shared_ptr<const Lesson>& lesson() const { return lesson_; }
    /// Whether a question waits for its answer.
    bool isAsking() const { return standing_ != 0; }

Q_SIGNALS:
    void settling();  ///< about to look what is unsaved: the last moment to take over what is being typed
    void saving();    ///< the document is about to be written: the last moment to bring it up to date
    void opened();    ///< another bench stands on the table
    void failed(const QString& line);  ///< file, place and reason, in one line
    void warned(const QString& line);

private:
    template <class Given>
    std::function<void(Given)> once(const std::function<void(Given)>& take);
    void load(const QString& path);
    void put(Bench bench, std::shared_ptr<const Lesson> lesson, const QString& path);
    void saveThen(const std::function<void()>& next);
    void choosePath(const QString& suggestion, const std::function<void()>& next);
    void write(const QString& path, const std::function<void()>& next);
    void askChanged(const QString& path, const std::function<void()>& next);
    void put(const QString& path, const std::function<void()>& next);

    BenchDocument& document_;
    FileGuard& guard_;
    Asker asker_;
    std::shared_ptr<const Lesson> lesson_;
    std::function<Bench()> makeNew_ = makeNewBench;
    quint64 questions_ = 0, standing_ = 0;  ///< how many were asked; the one that waits, or 0
};

}  // namespace tiepoint::ui
