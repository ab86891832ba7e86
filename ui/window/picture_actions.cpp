#include "ui/window/picture_actions.h"

#include "ui/document/file_dialogs.h"
#include "ui/export/picture_file.h"
#include "ui/theme/plain_text.h"

#include <QClipboard>
#include <QFileDialog>
#include <QFileInfo>
#include <QGuiApplication>
#include <QLocale>
#include <QMimeData>
#include <QPointer>
#include <QSettings>

#include <algorithm>
#include <vector>

namespace tiepoint::ui {
namespace {

constexpr int kWidthPixels = 2400;  ///< sharp on paper in a column's breadth

const QString kFirstEnding = QStringLiteral("svg");
const QString kPaperSetting = QStringLiteral("paper"), kLetterName = QStringLiteral("letter"),
              kA4Name = QStringLiteral("a4");

/// A kind of file as the dialogue names it.
struct FileKind {
    QString filter, ending;
    Paper paper;
};

/// The usual paper stands first.
std::vector<FileKind> fileKinds() {
    const Paper usual = usualPaper(), other = usual == Paper::A4 ? Paper::Letter : Paper::A4;
    const auto sheets = [](Paper paper) {
        const QString name = paper == Paper::A4 ? QStringLiteral("A4") : QStringLiteral("Letter");
        return FileKind{QStringLiteral("In true size, on %1 paper (*.pdf)").arg(name), QStringLiteral("pdf"), paper};
    };
    return {{QStringLiteral("Drawing (*.svg)"), kFirstEnding, usual},
            sheets(usual),
            sheets(other),
            {QStringLiteral("Picture (*.png)"), QStringLiteral("png"), usual}};
}

}  // namespace

Paper usualPaper() {
    const QString chosen = QSettings().value(kPaperSetting).toString();
    if (!chosen.isEmpty()) return chosen == kLetterName ? Paper::Letter : Paper::A4;
    const bool inches = QLocale::system().measurementSystem() == QLocale::ImperialUSSystem;
    return inches ? Paper::Letter : Paper::A4;
}

PictureActions::PictureActions(BenchView& view, QWidget* window)
    : QObject(window),
      view_(view),
      replace_([](const QString&, const std::function<void(bool)>& give) { give(false); }),
      ask_([this, window](const QString& suggestion, const GivePath& give) {
          askInDialogue(window, suggestion, give);
      }) {}

/// The dialogue asks before it replaces a file of exactly the name that was chosen; where the ending is added behind it, that is asked here.
void PictureActions::askInDialogue(QWidget* window, const QString& suggestion, const GivePath& give) {
    const std::vector<FileKind> kinds = fileKinds();
    QStringList filters;
    for (const FileKind& kind : kinds) filters << kind.filter;
    auto* ask = new QFileDialog(window, QStringLiteral("Save a picture of the bench"), QString(),
                                filters.join(QStringLiteral(";;")));
    fitDialog(*ask, *window);
    ask->setAttribute(Qt::WA_DeleteOnClose);
    ask->setAcceptMode(QFileDialog::AcceptSave);
    ask->selectFile(suggestion);
    connect(ask, &QDialog::accepted, this, [this, ask, kinds, give] {
        const QString chosen = ask->selectedFiles().value(0);
        const auto found = std::ranges::find(kinds, ask->selectedNameFilter(), &FileKind::filter);
        const FileKind kind = found == kinds.end() ? kinds.front() : *found;
        if (kind.ending == QStringLiteral("pdf"))
            QSettings().setValue(kPaperSetting, kind.paper == Paper::Letter ? kLetterName : kA4Name);
        if (!QFileInfo(chosen).suffix().isEmpty()) return give(chosen, kind.paper);
        const QString path = chosen + QLatin1Char('.') + kind.ending;
        if (!QFileInfo::exists(path)) return give(path, kind.paper);
        replace_(path, [give, path, paper = kind.paper](bool consent) {
            if (consent) give(path, paper);
        });
    });
    ask->open();
}

/// As the bench stands, without what the hand points at.
Picture PictureActions::picture() const {
    Picture picture = view_.wholePicture();
    picture.marks = {};
    return picture;
}

void PictureActions::copy() {
    const Picture seen = picture();
    const QImage image = pictureImage(seen, kWidthPixels);
    auto* content = new QMimeData;
    content->setImageData(image);
    content->setData(QStringLiteral("image/png"), picturePng(image, seen.bench()));  // with the bench inside
    QGuiApplication::clipboard()->setMimeData(content);
    Q_EMIT said(QStringLiteral("A picture of the bench is on the clipboard."));
}

void PictureActions::save() {
    const QString suggestion = fileNameFor(view_.picture().bench().title, QLatin1Char('.') + kFirstEnding);
    // The picture is of what was there to be seen when it was asked for, whenever the answer comes.
    ask_(suggestion, [this, self = QPointer(this), seen = picture()](const QString& path, Paper paper) {
        if (!self) return;
        if (const auto why = savePicture(seen, path, kWidthPixels, paper))
            return void(Q_EMIT failed(QStringLiteral("%1: %2").arg(path, *why)));
        Q_EMIT said(QStringLiteral("%1 is saved.").arg(QFileInfo(path).fileName()));
    });
}

}  // namespace tiepoint::ui
