#include "ui/window/picture_actions.h"

#include "ui/document/file_dialogs.h"
#include "ui/export/picture_file.h"
#include "ui/theme/plain_text.h"

#include <QClipboard>
#include <QFileDialog>
#include <QFileInfo>
#include <QGuiApplication>
#include <QPointer>

namespace tiepoint::ui {
namespace {

constexpr int kWidthPixels = 2400;  ///< sharp on paper in a column's breadth

const QString kFirstEnding = QStringLiteral("svg");

/// "svg" of "Drawing (*.svg)".
QString endingOf(const QString& filter) {
    const auto from = filter.indexOf(QStringLiteral("*.")) + 2;
    return filter.mid(from, filter.indexOf(QLatin1Char(')')) - from);
}

/// The dialogue asks before it replaces a file of exactly that name; where the ending is added behind it, that is asked here.
void takePath(QWidget* window, const QFileDialog& ask, const PictureActions::GivePath& give) {
    const QString chosen = ask.selectedFiles().value(0);
    if (!QFileInfo(chosen).suffix().isEmpty()) return give(chosen);
    const QString filter = ask.selectedNameFilter();
    const QString path = chosen + QLatin1Char('.') + (filter.isEmpty() ? kFirstEnding : endingOf(filter));
    if (!QFileInfo::exists(path)) return give(path);
    askToReplace(window, path, [give, path](bool consent) {
        if (consent) give(path);
    });
}

PictureActions::AskPath fileDialog(QWidget* window) {
    return [window](const QString& suggestion, const PictureActions::GivePath& give) {
        auto* ask = new QFileDialog(window, QStringLiteral("Save a picture of the bench"), QString(),
                                    QStringLiteral("Drawing (*.svg);;Drawing in true size (*.pdf);;Picture (*.png)"));
        ask->setAttribute(Qt::WA_DeleteOnClose);
        ask->setAcceptMode(QFileDialog::AcceptSave);
        ask->selectFile(suggestion);
        QObject::connect(ask, &QDialog::accepted, window, [window, ask, give] { takePath(window, *ask, give); });
        ask->open();
    };
}

}  // namespace

PictureActions::PictureActions(BenchView& view, QWidget* window)
    : QObject(window),
      view_(view),
      ask_(fileDialog(window)) {}

/// As the bench stands, without what the hand points at.
Picture PictureActions::picture() const {
    Picture picture = view_.picture();
    picture.marks = {};
    return picture;
}

void PictureActions::copy() {
    QGuiApplication::clipboard()->setImage(pictureImage(picture(), kWidthPixels));
    Q_EMIT said(QStringLiteral("A picture of the bench is on the clipboard."));
}

void PictureActions::save() {
    const QString suggestion = fileNameFor(view_.picture().bench().title, QLatin1Char('.') + kFirstEnding);
    // The picture is of what was there to be seen when it was asked for, whenever the answer comes.
    ask_(suggestion, [this, self = QPointer(this), seen = picture()](const QString& path) {
        if (!self) return;
        if (const auto why = savePicture(seen, path, kWidthPixels))
            return void(Q_EMIT failed(QStringLiteral("%1: %2").arg(path, *why)));
        Q_EMIT said(QStringLiteral("%1 is saved.").arg(QFileInfo(path).fileName()));
    });
}

}  // namespace tiepoint::ui
