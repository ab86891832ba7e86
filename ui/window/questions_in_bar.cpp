#include "ui/window/questions_in_bar.h"

#include "ui/document/file_dialogs.h"

#include <QFileInfo>

namespace tiepoint::ui {
namespace {

using Answer = FileActions::Answer;
using Conflict = FileActions::Conflict;

QString quotedName(const QString& path) { return QFileInfo(path).fileName(); }

void askAboutUnsaved(MessageBar& bar, const QString& title, const FileActions::GiveAnswer& give) {
    MessageBar::Question ask;
    ask.line = QStringLiteral("Save the changes of \u201c%1\u201d?").arg(title);
    ask.more = QStringLiteral("Without saving they are lost.");
    ask.answers = {{QStringLiteral("Save"), [give] { give(Answer::Save); }},
                   {QStringLiteral("Discard"), [give] { give(Answer::Discard); }},
                   {QStringLiteral("Cancel"), [give] { give(Answer::Cancel); }}};
    ask.cancel = [give] { give(Answer::Cancel); };
    bar.ask(std::move(ask));
}

void askAboutChange(MessageBar& bar, const QString& path, const FileActions::GiveConflict& give) {
    MessageBar::Question ask;
    ask.tone = MessageBar::Tone::Trouble;
    ask.line = QStringLiteral("\u201c%1\u201d was changed on the disk since it was opened here.").arg(quotedName(path));
    ask.more = QStringLiteral(
        "Saving puts this bench in place of that change. Taking the one on the disk gives up the unsaved changes made "
        "here.");
    ask.answers = {{QStringLiteral("Save anyway"), [give] { give(Conflict::Overwrite); }},
                   {QStringLiteral("Take the one on the disk"), [give] { give(Conflict::Reload); }},
                   {QStringLiteral("Cancel"), [give] { give(Conflict::Cancel); }}};
    ask.safe = 2;
    ask.cancel = [give] { give(Conflict::Cancel); };
    bar.ask(std::move(ask));
}

}  // namespace

void askToReplace(MessageBar& bar, const QString& path, const FileActions::GiveConsent& give) {
    MessageBar::Question ask;
    ask.tone = MessageBar::Tone::Trouble;
    ask.line = QStringLiteral("\u201c%1\u201d is there already.").arg(quotedName(path));
    ask.more = QStringLiteral("What is in it would be lost.");
    ask.answers = {{QStringLiteral("Replace it"), [give] { give(true); }},
                   {QStringLiteral("Cancel"), [give] { give(false); }}};
    ask.safe = 1;
    ask.cancel = [give] { give(false); };
    bar.ask(std::move(ask));
}

FileActions::Asker questionsInBar(MessageBar& bar, QWidget* window) {
    FileActions::Asker asker = fileDialogs(window);
    asker.unsaved = [&bar](const QString& title, const FileActions::GiveAnswer& give) {
        askAboutUnsaved(bar, title, give);
    };
    asker.changed = [&bar](const QString& path, const FileActions::GiveConflict& give) {
        askAboutChange(bar, path, give);
    };
    asker.replace = [&bar](const QString& path, const FileActions::GiveConsent& give) {
        askToReplace(bar, path, give);
    };
    return asker;
}

RevealMenu::Asker phraseInBar(MessageBar& bar) {
    return [&bar](const QString& title, const QString& question, const RevealMenu::GivePhrase& give) {
        MessageBar::Question ask;
        const auto end = question.indexOf(QLatin1Char('\n'));
        ask.line = question.left(end);
        ask.more = end < 0 ? QString() : question.mid(end + 1);
        ask.phrase = true;
        ask.answers = {{title, [&bar, give] { give(bar.phrase().text()); }}, {QStringLiteral("Cancel"), [] {}}};
        ask.safe = 1;
        ask.cancel = [] {};
        bar.ask(std::move(ask));
    };
}

}  // namespace tiepoint::ui
