#include "ui/document/file_dialogs.h"

#include "ui/theme/look.h"

namespace tiepoint::ui {
namespace {

const QString kFilter = QStringLiteral(
    "Benches and lessons (*.bench.json *.lesson.json);;Pictures with a bench inside (*.png);;All files (*)");
constexpr double kDialogWidth = 1180, kDialogHeight = 760;  ///< in the 1080-line layout

QFileDialog* dialogue(QWidget* window, const QString& title, const FileActions::GivePath& give) {
    auto* ask = new QFileDialog(window, title, QString(), kFilter);
    fitDialog(*ask, *window);
    ask->setAttribute(Qt::WA_DeleteOnClose);
    QObject::connect(ask, &QDialog::finished, window, [ask, give](int result) {
        give(result == QDialog::Accepted ? ask->selectedFiles().value(0) : QString());
    });
    return ask;
}

}  // namespace

void fitDialog(QFileDialog& dialog, const QWidget& window) {
    const Look look = lookFor(theme(ThemeName::Day), window.size());
    dialog.setFont(look.font(text::kSmall));
    // What was made with the dialogue has fonts of its own where a style gave it one.
    for (QWidget* each : dialog.findChildren<QWidget*>()) each->setFont(dialog.font());
    dialog.resize(look.ipx(kDialogWidth), look.ipx(kDialogHeight));
}

FileActions::Asker fileDialogs(QWidget* window) {
    FileActions::Asker asker;
    asker.openPath = [window](const FileActions::GivePath& give) {
        QFileDialog* ask = dialogue(window, QStringLiteral("Open a bench"), give);
        ask->setFileMode(QFileDialog::ExistingFile);
        ask->open();
    };
    asker.savePath = [window](const QString& suggestion, const FileActions::GivePath& give) {
        QFileDialog* ask = dialogue(window, QStringLiteral("Save the bench"), give);
        ask->setAcceptMode(QFileDialog::AcceptSave);
        // No default suffix: some systems' dialogues add it only behind their question about replacing.
        ask->selectFile(suggestion);
        ask->open();
    };
    asker.changed = [](const QString&, const FileActions::GiveConflict& give) { give(FileActions::Conflict::Cancel); };
    asker.replace = [](const QString&, const FileActions::GiveConsent& give) { give(false); };
    asker.unsaved = [](const QString&, const FileActions::GiveAnswer& give) { give(FileActions::Answer::Cancel); };
    return asker;
}

}  // namespace tiepoint::ui
