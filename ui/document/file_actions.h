#pragma once
// What File does: new, open, save, save as, and the question about unsaved changes. A bench is loaded aside and put in place only
// when it proved good; a failure is one line and changes nothing. Never runs an event loop of its own.

#include "ui/document/bench_document.h"
#include "ui/document/file_guard.h"

#include <QObject>
#include <QWidget>

#include <functional>

namespace tiepoint::ui {

class FileActions : public QObject {
    Q_OBJECT
public:
    enum class Answer { Save, Discard, Cancel };
    /// About a file that someone else changed: put ours in its place, take theirs, or leave both.
    enum class Conflict { Overwrite, Reload, Cancel };
    using GiveConflict = std::function<void(Conflict)>;
    using GivePath = std::function<void(const QString& path)>;  ///< called with the path chosen, or never
    using GiveAnswer = std::function<void(Answer)>;

    /// How a person is asked; tests answer in their place.
    struct Asker {
        std::function<void(const GivePath&)> openPath;
        std::function<void(const QString& suggestion, const GivePath&)> savePath;
        std::function<void(const QString& title, const GiveAnswer&)> unsaved;
        std::function<void(const QString& path, const GiveConflict&)> changed;
    };

    /// `window` is the parent of the dialogues. The guard knows what stands on the disk.
    FileActions(BenchDocument& document, FileGuard& guard, QWidget* window);
    void setAsker(Asker asker) { asker_ = std::move(asker); }

    void newBench();
    void open();
    void openFile(const QString& path);
    /// Reads the document's file again, in place of what is on the bench.
    void reload();
    /// A bench of the program's own, by its name among the embedded files; gets no path, so that saving asks for one.
    void openEmbedded(const QString& name);
    /// Unsaved work of a program that is gone: opened as unsaved changes of its own file.
    void openCopy(const QString& copyPath, const QString& sourcePath);
    void save();
    void saveAs();
    /// Runs `next` once unsaved changes are saved or given up; not at all if the person cancels.
    void whenSafe(const std::function<void()>& next);

Q_SIGNALS:
    void saving();                     ///< the document is about to be written: the last moment to bring it up to date
    void opened();                     ///< another bench stands on the table
    void failed(const QString& line);  ///< file, place and reason, in one line
    void warned(const QString& line);

private:
    void load(const QString& path);
    void saveThen(const std::function<void()>& next);
    void write(const QString& path, const std::function<void()>& next);
    void put(const QString& path, const std::function<void()>& next);

    BenchDocument& document_;
    FileGuard& guard_;
    Asker asker_;
};

}  // namespace tiepoint::ui
