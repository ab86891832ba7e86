#include "ui/window/picture_actions.h"

#include "ui/export/picture_file.h"

#include <QClipboard>
#include <QFileDialog>
#include <QFileInfo>
#include <QGuiApplication>

namespace tiepoint::ui {
namespace {

constexpr int kWidthPixels = 2400;  ///< sharp on paper in a column's breadth

PictureActions::AskPath fileDialog(QWidget* window) {
    return [window](const QString& suggestion, const PictureActions::GivePath& give) {
        auto* ask = new QFileDialog(window, QStringLiteral("Save a picture of the bench"), QString(),
                                    QStringLiteral("Drawing (*.svg);;Drawing in true size (*.pdf);;Picture (*.png)"));
        ask->setAttribute(Qt::WA_DeleteOnClose);
        ask->setAcceptMode(QFileDialog::AcceptSave);
        ask->setDefaultSuffix(QStringLiteral("svg"));
        ask->selectFile(suggestion);
        QObject::connect(ask, &QFileDialog::filterSelected, ask, [ask](const QString& filter) {
            const auto from = filter.indexOf(QStringLiteral("*.")) + 2;
            ask->setDefaultSuffix(filter.mid(from, filter.indexOf(QLatin1Char(')')) - from));
        });
        QObject::connect(ask, &QFileDialog::fileSelected, window, give);
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
    const QString title = QString::fromStdString(view_.picture().bench().title);
    ask_(title + QStringLiteral(".svg"), [this](const QString& path) {
        if (const auto why = savePicture(picture(), path, kWidthPixels))
            return void(Q_EMIT failed(QStringLiteral("%1: %2").arg(path, *why)));
        Q_EMIT said(QStringLiteral("%1 is saved.").arg(QFileInfo(path).fileName()));
    });
}

}  // namespace tiepoint::ui
