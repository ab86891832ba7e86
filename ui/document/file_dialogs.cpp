#include "ui/document/file_dialogs.h"

#include "ui/theme/plain_text.h"

#include <QFileDialog>
#include <QFileInfo>
#include <QMessageBox>
#include <QPushButton>

namespace tiepoint::ui {
namespace {

const QString kFilter = QStringLiteral("Benches (*.bench.json);;All files (*)");

QFileDialog* dialogue(QWidget* window, const QString& title, const FileActions::GivePath& give) {
    auto* ask = new QFileDialog(window, title, QString(), kFilter);
    ask->setAttribute(Qt::WA_DeleteOnClose);
    QObject::connect(ask, &QDialog::finished, window, [ask, give](int result) {
        give(result == QDialog::Accepted ? ask->selectedFiles().value(0) : QString());
    });
    return ask;
}

void askUnsaved(QWidget* window, const QString& title, const FileActions::GiveAnswer& give) {
    auto* ask = new QMessageBox(QMessageBox::Question, QStringLiteral("Tiepoint"),
                                QStringLiteral("Save the changes of “%1”?").arg(plainText(title)),
                                QMessageBox::Save | QMessageBox::Discard | QMessageBox::Cancel, window);
    ask->setTextFormat(Qt::PlainText);
    ask->setInformativeText(QStringLiteral("Without saving they are lost."));
    ask->setDefaultButton(QMessageBox::Save);
    ask->setAttribute(Qt::WA_DeleteOnClose);
    QObject::connect(ask, &QDialog::finished, window, [give](int result) {
        if (result == QMessageBox::Save) return give(FileActions::Answer::Save);
        give(result == QMessageBox::Discard ? FileActions::Answer::Discard : FileActions::Answer::Cancel);
    });
    ask->open();
}

void askChanged(QWidget* window, const QString& path, const FileActions::GiveConflict& give) {
    auto* ask = new QMessageBox(QMessageBox::Warning, QStringLiteral("Tiepoint"),
                                QStringLiteral("“%1” was changed on the disk since it was opened here.")
                                    .arg(plainText(QFileInfo(path).fileName())),
                                QMessageBox::Cancel, window);
    ask->setTextFormat(Qt::PlainText);
    ask->setInformativeText(
        QStringLiteral("Saving puts this bench in place of that change. Taking the one on the "
                       "disk gives up the unsaved changes made here."));
    const auto* overwrite = ask->addButton(QStringLiteral("Save anyway"), QMessageBox::DestructiveRole);
    const auto* reload = ask->addButton(QStringLiteral("Take the one on the disk"), QMessageBox::AcceptRole);
    ask->setDefaultButton(QMessageBox::Cancel);
    ask->setAttribute(Qt::WA_DeleteOnClose);
    QObject::connect(ask, &QDialog::finished, window, [ask, overwrite, reload, give](int) {
        const auto* chosen = ask->clickedButton();
        give(chosen == overwrite ? FileActions::Conflict::Overwrite
             : chosen == reload  ? FileActions::Conflict::Reload
                                 : FileActions::Conflict::Cancel);
    });
    ask->open();
}

}  // namespace

void askToReplace(QWidget* window, const QString& path, const FileActions::GiveConsent& give) {
    auto* ask = new QMessageBox(QMessageBox::Warning, QStringLiteral("Tiepoint"),
                                QStringLiteral("“%1” is there already.").arg(plainText(QFileInfo(path).fileName())),
                                QMessageBox::Cancel, window);
    ask->setTextFormat(Qt::PlainText);
    ask->setInformativeText(QStringLiteral("What stands in it would be lost."));
    const auto* replace = ask->addButton(QStringLiteral("Replace it"), QMessageBox::DestructiveRole);
    ask->setDefaultButton(QMessageBox::Cancel);
    ask->setAttribute(Qt::WA_DeleteOnClose);
    QObject::connect(ask, &QDialog::finished, window,
                     [ask, replace, give](int) { give(ask->clickedButton() == replace); });
    ask->open();
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
    asker.changed = [window](const QString& path, const FileActions::GiveConflict& give) {
        askChanged(window, path, give);
    };
    asker.replace = [window](const QString& path, const FileActions::GiveConsent& give) {
        askToReplace(window, path, give);
    };
    asker.unsaved = [window](const QString& title, const FileActions::GiveAnswer& give) {
        askUnsaved(window, title, give);
    };
    return asker;
}

}  // namespace tiepoint::ui
