#include "ui/document/file_actions.h"

#include "core/base/embedded.h"
#include "core/base/file_io.h"
#include "core/bench/bench_file.h"
#include "core/bench/bench_in_picture.h"
#include "core/course/lesson_file.h"
#include "ui/document/file_dialogs.h"
#include "ui/theme/plain_text.h"

#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QPointer>

#include <algorithm>

namespace tiepoint::ui {
namespace {

const QString kSuffix = QStringLiteral(".bench.json");

QString line(const Error& error) { return QString::fromStdString(error.oneLine()); }

/// By its first bytes, whatever it is called.
bool isPicture(const QString& path) {
    QFile file(path);
    constexpr qint64 kSignatureBytes = 8;
    if (!file.open(QIODevice::ReadOnly)) return false;
    const QByteArray head = file.read(kSignatureBytes);
    return isPng({head.constData(), static_cast<std::size_t>(head.size())});
}

QString withSuffix(const QString& path) { return QFileInfo(path).suffix().isEmpty() ? path + kSuffix : path; }

/// What stood in the file of a copy when it was read or written last. Where that isn't known, a file that is younger than the copy counts as
/// changed since.
QByteArray digestOfSource(const Recovery& recovery) {
    if (recovery.sourceDigest) return *recovery.sourceDigest;
    const bool younger = QFileInfo(recovery.sourcePath).lastModified() > recovery.savedAt;
    return younger ? QByteArray() : FileGuard::digestOfFile(recovery.sourcePath);
}

}  // namespace

FileActions::FileActions(BenchDocument& document, FileGuard& guard, QWidget* window)
    : QObject(window),
      document_(document),
      guard_(guard),
      asker_(fileDialogs(window)) {}

/// Passes an answer on: the first, and only while it is about the bench on the table.
template <class Given>
std::function<void(Given)> FileActions::once(const std::function<void(Given)>& take) {
    standing_ = ++questions_;
    return [self = QPointer<FileActions>(this), number = standing_, opening = document_.opening(), take](Given given) {
        if (!self || self->standing_ != number) return;
        self->standing_ = 0;
        if (self->document_.opening() == opening) take(std::move(given));
    };
}

void FileActions::newBench(const std::function<void()>& then) { beginWith(makeNew_(), then); }

void FileActions::beginWith(Bench bench, const std::function<void()>& then) {
    whenSafe([this, bench = std::move(bench), then] {
        put(bench, nullptr, {});
        Q_EMIT opened();
        then();
    });
}

void FileActions::putLesson(std::shared_ptr<const Lesson> lesson) {
    whenSafe([this, lesson] {
        put(*lesson->start, lesson, {});
        Q_EMIT opened();
    });
}

void FileActions::open() {
    if (isAsking()) return;
    asker_.openPath(once<QString>([this](const QString& path) {
        if (!path.isEmpty()) openFile(path);
    }));
}

void FileActions::openFile(const QString& path) {
    whenSafe([this, path] { load(path); });
}

void FileActions::openEmbedded(const QString& name, const std::optional<Views>& views) {
    whenSafe([this, name, views] {
        const auto file = std::ranges::find(embeddedFiles(), std::string_view(name.toStdString()), &EmbeddedFile::name);
        if (file == embeddedFiles().end())
            return void(Q_EMIT failed(QStringLiteral("There is no bench %1.").arg(name)));
        auto read = readTable(file->text);
        if (!read) return void(Q_EMIT failed(line(read.error())));
        if (views) read.value().bench.views = SavedViews{*views, {}};
        put(std::move(read.value().bench), read->lesson, {});
        Q_EMIT opened();
    });
}

void FileActions::openMade(const Bench& bench, const std::function<void()>& then) {
    whenSafe([this, bench, then] {
        put(bench, nullptr, {});
        Q_EMIT opened();
        then();
    });
}

void FileActions::openCopy(const Recovery& recovery, const std::function<void()>& then) {
    whenSafe([this, recovery, then] {
        auto read = readBenchFile(recovery.copyPath.toStdString());
        if (!read) return void(Q_EMIT failed(line(read.error())));
        put(std::move(read).value().bench, nullptr, recovery.sourcePath);
        guard_.remember(digestOfSource(recovery));
        document_.markUnsaved();  // the copy is not what stands in the file
        Q_EMIT opened();
        then();
        guard_.look();
    });
}

void FileActions::load(const QString& path) {
    // Taken before the file is read: what is written between the two counts as a change, and is asked about.
    const QByteArray digest = FileGuard::digestOfFile(path);
    auto read = readTableFile(path.toStdString());
    if (!read) return void(Q_EMIT failed(line(read.error())));
    const auto warnings = read->warnings;
    const QString place = isPicture(path) ? QString() : QFileInfo(path).absoluteFilePath();
    put(std::move(read.value().bench), read->lesson,
        place);  // a bench that came in a picture has no file yet: saving asks for one
    if (!lesson_ && !place.isEmpty()) guard_.remember(digest);
    Q_EMIT opened();
    if (warnings.empty()) return;
    const QString more = warnings.size() == 1 ? QString() : QStringLiteral(" (and %1 more)").arg(warnings.size() - 1);
    Q_EMIT warned(line(warnings.front()) + more);
}

void FileActions::put(Bench bench, std::shared_ptr<const Lesson> lesson, const QString& path) {
    lesson_ = std::move(lesson);
    document_.reset(std::move(bench), lesson_ ? QString() : path);
}

void FileActions::openPicture(const QByteArray& png) {
    whenSafe([this, png] {
        const auto text = benchInside({png.constData(), static_cast<std::size_t>(png.size())});
        if (!text) return void(Q_EMIT failed(line(text.error())));
        auto read = readBench(*text);
        if (!read) return void(Q_EMIT failed(line(read.error())));
        put(std::move(read).value().bench, nullptr, {});
        Q_EMIT opened();
    });
}

void FileActions::reload() {
    if (isAsking()) return;
    Q_EMIT settling();
    if (document_.isModified()) return askChanged(document_.filePath(), [] {});
    load(document_.filePath());
}

void FileActions::save() {
    if (isAsking()) return;
    Q_EMIT settling();
    saveThen([] {});
}

void FileActions::saveAs() {
    if (isAsking()) return;
    Q_EMIT settling();
    choosePath(document_.filePath().isEmpty() ? fileNameFor(document_.bench()->title, kSuffix) : document_.filePath(),
               [] {});
}

void FileActions::saveThen(const std::function<void()>& next) {
    if (document_.filePath().isEmpty()) return choosePath(fileNameFor(document_.bench()->title, kSuffix), next);
    write(document_.filePath(), next);
}

void FileActions::choosePath(const QString& suggestion, const std::function<void()>& next) {
    asker_.savePath(suggestion, once<QString>([this, next](const QString& chosen) {
                        if (chosen.isEmpty()) return;
                        const QString path = withSuffix(chosen);
                        if (path == chosen || path == document_.filePath() || !QFileInfo::exists(path))
                            return write(path, next);
                        // Whoever chose the path was asked about a file of the name without its ending.
                        asker_.replace(path, once<bool>([this, path, next](bool consent) {
                                           if (consent) write(path, next);
                                       }));
                    }));
}

void FileActions::write(const QString& path, const std::function<void()>& next) {
    const bool own = QFileInfo(path).absoluteFilePath() == document_.filePath();
    if (own && guard_.isChanged()) return askChanged(path, next);
    put(path, next);
}

void FileActions::askChanged(const QString& path, const std::function<void()>& next) {
    const QByteArray asked = FileGuard::digestOfFile(path);
    const auto take = [this, path, next, asked, revision = document_.revision()](Conflict answer) {
        if (answer == Conflict::Cancel) return;
        const bool another = FileGuard::digestOfFile(path) != asked;
        const bool more = answer == Conflict::Reload && document_.revision() != revision;
        if (another || more) return askChanged(path, next);
        if (answer == Conflict::Overwrite) put(path, next);
        if (answer == Conflict::Reload) load(path);
    };
    asker_.changed(path, once<Conflict>(take));
}

void FileActions::put(const QString& path, const std::function<void()>& next) {
    Q_EMIT saving();
    const std::string text = writeBench(*document_.bench());
    const auto written = writeFileAtomically(path.toStdString(), text);
    if (!written) return void(Q_EMIT failed(line(written.error())));
    document_.setFilePath(QFileInfo(path).absoluteFilePath());
    guard_.remember(FileGuard::digestOf(text));
    document_.markSaved();
    next();
}

void FileActions::whenSafe(const std::function<void()>& next) {
    if (isAsking()) return;
    Q_EMIT settling();
    if (!isUnsafe()) return next();
    const auto take = [this, next, revision = document_.revision()](Answer answer) {
        if (answer == Answer::Save) return saveThen(next);
        if (answer == Answer::Cancel) return;
        if (document_.revision() == revision)
            next();
        else
            whenSafe(next);  // there is more to lose now than was asked about
    };
    asker_.unsaved(QString::fromStdString(document_.bench()->title), once<Answer>(take));
}

}  // namespace tiepoint::ui
