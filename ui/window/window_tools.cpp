#include "ui/window/window_tools.h"

#include "core/edit/placement.h"
#include "core/lesson/first_build.h"
#include "ui/access/bench_access.h"
#include "ui/view/bench_marks.h"
#include "ui/window/file_drop.h"
#include "ui/window/questions_in_bar.h"

#include <QFileInfo>
#include <QSettings>

#include <algorithm>

namespace tiepoint::ui {
namespace {

const QString kStepsSetting = QStringLiteral("window/steps");

}  // namespace

WindowTools::WindowTools(const Parts& parts, QMenuBar& menus, QWidget* stage, QWidget* window)
    : QObject(window),
      parts_(parts),
      steps_(new StepsRow(parts.document, &parts.tray)),
      keys_(new KeysPage(stage)),
      guide_(new GuideCard(parts.view, parts.live, stage)),
      boards_(new BoardMenu(parts.document, &menus)),
      recent_(new RecentFiles(&menus)),
      pictures_(new PictureActions(parts.view, window)),
      sheets_(new SheetTools({parts.document, parts.live, parts.bar}, menus, stage, window)) {
    // Boards stand between Edit and View; recent files behind Open.
    QMenu* file = menus.actions().front()->menu();
    file->insertMenu(parts.actions.start, recent_);
    menus.insertMenu(menus.actions().at(2), boards_);
    connect(sheets_, &SheetTools::closed, this, [this] { parts_.view.setFocus(Qt::OtherFocusReason); });
    announceBench(parts.view, parts.live);
    joinFiles(window);
    joinGuard();
    joinEdits();
    joinSteps();
}

void WindowTools::joinFiles(QWidget* window) {
    connect(&parts_.document, &BenchDocument::fileChanged, this, [this] { recent_->add(parts_.document.filePath()); });
    connect(recent_, &RecentFiles::chosen, &parts_.files, &FileActions::openFile);
    auto* drop = new FileDrop({window, parts_.view.viewport()}, this);
    connect(drop, &FileDrop::dropped, &parts_.files, &FileActions::openFile);
    connect(drop, &FileDrop::pictureDropped, &parts_.files, &FileActions::openPicture);
    const auto notice = [this](const QString& words) { parts_.bar.say(MessageBar::Tone::Notice, words); };
    connect(pictures_, &PictureActions::said, this, notice);
    connect(pictures_, &PictureActions::failed, this,
            [this](const QString& why) { parts_.bar.say(MessageBar::Tone::Trouble, why); });
    pictures_->setAskReplace(
        [this](const QString& path, const std::function<void(bool)>& give) { askToReplace(parts_.bar, path, give); });
    connect(boards_, &BoardMenu::refused, this, [this](const QString& why, const QString& board) {
        parts_.bar.say(MessageBar::Tone::Notice, why);
        sayAtBoard(why, board);
    });
    connect(boards_, &BoardMenu::said, this, [this](const QString& words, const QString& board) {
        parts_.bar.say(MessageBar::Tone::Notice, words);
        sayAtBoard(words, board);
    });
    connect(boards_, &BoardMenu::moveWanted, &parts_.view, &BenchView::beginMovingBoard);
    connect(parts_.actions.copyPicture, &QAction::triggered, pictures_, &PictureActions::copy);
    connect(parts_.actions.savePicture, &QAction::triggered, pictures_, &PictureActions::save);
}

/// Words at the middle of a board, if there is one of that id.
void WindowTools::sayAtBoard(const QString& words, const QString& board) {
    const Board* there = parts_.document.bench()->findBoard(board.toStdString());
    if (!there) return;
    const Rect frame = there->frameMm();
    const Point middle{frame.left + frame.width / 2, frame.top + frame.height / 2};
    parts_.view.marks().flash(words.toStdString(), parts_.view.picture().table->seen(middle));
}

void WindowTools::joinGuard() {
    connect(&parts_.guard, &FileGuard::openElsewhere, this, [this](const QString& path) {
        // A bench is just being opened, which clears the bar: this is said after it.
        QMetaObject::invokeMethod(
            this,
            [this, path] {
                parts_.bar.say(MessageBar::Tone::Trouble,
                               QStringLiteral("%1 is open in another window too. Whoever saves last will be asked.")
                                   .arg(QFileInfo(path).fileName()));
            },
            Qt::QueuedConnection);
    });
    connect(&parts_.guard, &FileGuard::changedOnDisk, this, [this](const QString& path) {
        parts_.bar.say(MessageBar::Tone::Trouble,
                       QStringLiteral("%1 was changed on the disk.").arg(QFileInfo(path).fileName()),
                       {{QStringLiteral("Take that one"),
                         [this, path] {
                             if (parts_.document.filePath() == path) parts_.files.reload();
                         }},
                        {QStringLiteral("Keep this one"), [] {}}});
    });
    connect(&parts_.guard, &FileGuard::takenAway, this, [this](const QString& path) {
        parts_.bar.say(MessageBar::Tone::Trouble,
                       QStringLiteral("%1 is gone from the disk. What you see here is in no file any more.")
                           .arg(QFileInfo(path).fileName()),
                       {{QStringLiteral("Save it again"), [this] { parts_.files.save(); }}});
    });
}

/// Folded away or not, as it was left.
void WindowTools::joinSteps() {
    QAction* const shown = parts_.actions.steps;
    parts_.tray.setTop(steps_, StepsRow::kHeight);
    connect(shown, &QAction::toggled, this, [this](bool wanted) {
        QSettings().setValue(kStepsSetting, wanted);
        steps_->setVisible(wanted);
        Q_EMIT arrangeWanted();
    });
    shown->setChecked(QSettings().value(kStepsSetting, false).toBool());
    connect(shown, &QAction::triggered, this, [this](bool wanted) {
        if (wanted)
            steps_->setFocus(Qt::OtherFocusReason);
        else
            parts_.view.setFocus(Qt::OtherFocusReason);
    });
    connect(steps_, &StepsRow::closed, this, [this] {
        parts_.actions.steps->setChecked(false);
        parts_.view.setFocus(Qt::OtherFocusReason);
    });
}

void WindowTools::joinEdits() {
    const Actions& actions = parts_.actions;
    connect(actions.keys, &QAction::triggered, keys_, &KeysPage::open);
    connect(keys_, &KeysPage::closed, this, [this] { parts_.view.setFocus(Qt::OtherFocusReason); });
    connect(actions.firstBuild, &QAction::triggered, this, &WindowTools::beginFirstBuild);
    connect(guide_, &GuideCard::ended, this, [this] { parts_.view.setFocus(Qt::OtherFocusReason); });
    connect(&parts_.files, &FileActions::opened, guide_, &GuideCard::end);
    connect(actions.note, &QAction::triggered, this, [this] { parts_.view.beginNote(); });
    connect(actions.pin, &QAction::triggered, this, [this] { parts_.view.pinReading(); });
    connect(actions.probe, &QAction::triggered, this, [this] { parts_.view.probe(); });
    connect(actions.layFlat, &QAction::triggered, this, &WindowTools::layFlat);
    connect(actions.find, &QAction::triggered, this, [this] { parts_.tray.beginSearch(); });
}

void WindowTools::setLook(const Look& look) {
    sheets_->setLook(look);
    steps_->setLook(look);
    keys_->setLook(look);
    guide_->setLook(look);
}

void WindowTools::placeIn(const QRect& bench, const QRect& card) {
    bench_ = bench;
    card_ = card;
    keys_->placeIn(bench.united(card));
    guide_->placeIn(card);
}

void WindowTools::beginFirstBuild() {
    // A learner's bench begins with the lesson's own supply, whose limit is a beginner's.
    parts_.files.beginWith(*firstBuildLesson().start, [this] {
        guide_->begin();
        parts_.view.setFocus(Qt::OtherFocusReason);
    });
}

/// Lays the selected jumpers flat; if all of them lie flat, makes arcs of them again.
void WindowTools::layFlat() {
    const auto bench = parts_.document.bench();
    std::vector<Jumper> jumpers;
    for (const QString& id : parts_.view.selection()) {
        if (const Jumper* jumper = bench->findJumper(id.toStdString())) jumpers.push_back(*jumper);
    }
    if (jumpers.empty()) return parts_.bar.say(MessageBar::Tone::Notice, QStringLiteral("Select a jumper first."));
    const bool flat = !std::ranges::all_of(jumpers, &Jumper::flat);
    const std::string what = jumpers.size() == 1 ? jumpers.front().id : "jumpers";
    const std::string first = jumpers.front().id;
    Edit edit{(flat ? "Lay " + what + " flat" : "Arch " + what), {}};
    for (Jumper& jumper : jumpers) {
        jumper.flat = flat;
        edit.operations.emplace_back(ReplaceJumper{std::move(jumper)});
    }
    if (const auto after = apply(*bench, edit)) {
        const Table& table = *parts_.view.picture().table;
        const Point at = endMm(*bench, table, bench->findJumper(first)->ends[0]);
        if (const auto why = refusalOfChange(*bench, after->bench)) return parts_.view.marks().flash(*why, at);
    }
    if (const auto why = parts_.document.push(edit)) parts_.bar.say(MessageBar::Tone::Notice, *why);
}

}  // namespace tiepoint::ui
