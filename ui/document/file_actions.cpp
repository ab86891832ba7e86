#include "ui/document/file_actions.h"

#include "core/base/embedded.h"
#include "core/bench/bench_file.h"
#include "ui/document/file_dialogs.h"

#include <QDir>
#include <QFileInfo>

#include <algorithm>

namespace tiepoint::ui {
namespace {

const QString kSuffix = QStringLiteral(".bench.json");

QString line(const Error& error) { return QString::fromStdString(error.oneLine()); }

/// A file name for a title: letters, digits and hyphens.
QString fileNameFor(const std::string& title) {
    QString name;
    for (const QChar c : QString::fromStdString(title).toLower()) name += c.isLetterOrNumber() ? c : QLatin1Char('-');
    return (name.isEmpty() ? QStringLiteral("bench") : name) + kSuffix;
}

QString withSuffix(const QString& path) { return QFileInfo(path).suffix().isEmpty() ? path + kSuffix : path; }

}  // namespace

FileActions::FileActions(BenchDocument& document, FileGuard& guard, QWidget* window)
    : QObject(window),
      document_(document),
      guard_(guard),
      asker_(fileDialogs(window)) {}

void FileActions::newBench() {
    whenSafe([this] {
        document_.reset(makeNewBench(), {});
        Q_EMIT opened();
    });
}

void FileActions::open() {
    whenSafe([this] { asker_.openPath([this](const QString& path) { load(path); }); });
}

void FileActions::openFile(const QString& path) {
    whenSafe([this, path] { load(path); });
}

void FileActions::openEmbedded(const QString& name) {
    whenSafe([this, name] {
        const auto file = std::ranges::find(embeddedFiles(), std::string_view(name.toStdString()), &EmbeddedFile::name);
        if (file == embeddedFiles().end())
            return void(Q_EMIT failed(QStringLiteral("There is no bench %1.").arg(name)));
        auto read = readBench(file->text);
        if (!read) return void(Q_EMIT failed(line(read.error())));
        document_.reset(std::move(read).value().bench, {});
        Q_EMIT opened();
    });
}

void FileActions::openCopy(const QString& copyPath, const QString& sourcePath) {
    whenSafe([this, copyPath, sourcePath] {
        auto read = readBenchFile(copyPath.toStdString());
        if (!read) return void(Q_EMIT failed(line(read.error())));
        document_.reset(std::move(read).value().bench, sourcePath);
        document_.undoStack().resetClean();  // the copy is not what stands in the file: it counts as unsaved
        Q_EMIT opened();
    });
}

void FileActions::load(const QString& path) {
    auto read = readBenchFile(path.toStdString());
    if (!read) return void(Q_EMIT failed(line(read.error())));
    const auto warnings = read->warnings;
    document_.reset(std::move(read).value().bench, QFileInfo(path).absoluteFilePath());
    guard_.remember();
    Q_EMIT opened();
    if (warnings.empty()) return;
    const QString more = warnings.size() == 1 ? QString() : QStringLiteral(" (and %1 more)").arg(warnings.size() - 1);
    Q_EMIT warned(line(warnings.front()) + more);
}

void FileActions::reload() { load(document_.filePath()); }

void FileActions::save() {
    saveThen([] {});
}

void FileActions::saveAs() {
    const QString there = document_.filePath().isEmpty() ? fileNameFor(document_.bench()->title) : document_.filePath();
    asker_.savePath(there, [this](const QString& path) { write(withSuffix(path), [] {}); });
}

void FileActions::saveThen(const std::function<void()>& next) {
    if (!document_.filePath().isEmpty()) return write(document_.filePath(), next);
    asker_.savePath(fileNameFor(document_.bench()->title),
                    [this, next](const QString& path) { write(withSuffix(path), next); });
}

void FileActions::write(const QString& path, const std::function<void()>& next) {
    const bool own = QFileInfo(path).absoluteFilePath() == document_.filePath();
    if (!own || !guard_.isChanged()) return put(path, next);
    asker_.changed(path, [this, path, next](Conflict answer) {
        if (answer == Conflict::Overwrite) put(path, next);
        if (answer == Conflict::Reload) reload();
    });
}

void FileActions::put(const QString& path, const std::function<void()>& next) {
    Q_EMIT saving();
    const auto written = writeBenchFile(*document_.bench(), path.toStdString());
    if (!written) return void(Q_EMIT failed(line(written.error())));
    document_.setFilePath(QFileInfo(path).absoluteFilePath());
    guard_.remember();
    document_.markSaved();
    next();
}

void FileActions::whenSafe(const std::function<void()>& next) {
    if (!document_.isModified()) return next();
    asker_.unsaved(QString::fromStdString(document_.bench()->title), [this, next](Answer answer) {
        if (answer == Answer::Save) saveThen(next);
        if (answer == Answer::Discard) next();
    });
}

}  // namespace tiepoint::ui
