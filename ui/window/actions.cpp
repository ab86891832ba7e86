#include "ui/window/actions.h"

#include "ui/view/key_list.h"

namespace tiepoint::ui {
namespace {

/// Keys of the list, and those by which this desktop does the same.
QList<QKeySequence> shortcuts(KeyFor what, QKeySequence::StandardKey standard) {
    QList<QKeySequence> keys(keysFor(what).begin(), keysFor(what).end());
    if (standard == QKeySequence::UnknownKey) return keys;
    for (const QKeySequence& key : QKeySequence::keyBindings(standard)) {
        if (!keys.contains(key)) keys << key;
    }
    return keys;
}

QAction* make(QWidget* window, const char* name) {
    auto* action = new QAction(QString::fromUtf8(name), window);
    window->addAction(action);
    return action;
}

QAction* make(QWidget* window, const char* name, KeyFor what,
              QKeySequence::StandardKey standard = QKeySequence::UnknownKey) {
    QAction* action = make(window, name);
    action->setShortcuts(shortcuts(what, standard));
    return action;
}

QAction* makeToggle(QWidget* window, const char* name) {
    QAction* action = make(window, name);
    action->setCheckable(true);
    return action;
}

QAction* makeToggle(QWidget* window, const char* name, KeyFor what) {
    QAction* action = make(window, name, what);
    action->setCheckable(true);
    return action;
}

QList<QAction*> makeRowOfCopies(QWidget* window) {
    constexpr int kFewest = 2;
    QList<QAction*> actions;
    for (const QKeySequence& key : keysFor(KeyFor::RowOfCopies)) {
        const int count = kFewest + static_cast<int>(actions.size());
        QAction* action = new QAction(QStringLiteral("&%1 copies in a row").arg(count), window);
        action->setShortcut(key);
        action->setData(count);
        window->addAction(action);
        actions << action;
    }
    return actions;
}

}  // namespace

Actions::Actions(QWidget* window)
    : newBench(make(window, "&New bench", KeyFor::New, QKeySequence::New)),
      open(make(window, "&Open…", KeyFor::Open, QKeySequence::Open)),
      save(make(window, "&Save", KeyFor::Save, QKeySequence::Save)),
      saveAs(make(window, "Save &as…", KeyFor::SaveAs, QKeySequence::SaveAs)),
      savePicture(make(window, "Save a &picture…", KeyFor::SavePicture)),
      close(make(window, "&Close", KeyFor::Close, QKeySequence::Close)),
      quit(make(window, "&Quit", KeyFor::Quit, QKeySequence::Quit)),
      undo(make(window, "&Undo", KeyFor::Undo, QKeySequence::Undo)),
      redo(make(window, "&Redo", KeyFor::Redo, QKeySequence::Redo)),
      cut(make(window, "Cu&t", KeyFor::Cut, QKeySequence::Cut)),
      copy(make(window, "&Copy", KeyFor::Copy, QKeySequence::Copy)),
      paste(make(window, "&Paste", KeyFor::Paste, QKeySequence::Paste)),
      duplicate(make(window, "D&uplicate", KeyFor::Duplicate)),
      remove(make(window, "&Delete", KeyFor::Remove)),
      selectAll(make(window, "Select &all", KeyFor::SelectAll, QKeySequence::SelectAll)),
      rename(make(window, "Re&name the bench…", KeyFor::Rename)),
      rowOfCopies(makeRowOfCopies(window)),
      turn(make(window, "Turn\t]")),  // the board's own key
      copyPicture(make(window, "Copy as p&icture", KeyFor::CopyPicture)),
      note(make(window, "N&ote…", KeyFor::Note)),
      pin(make(window, "P&in a reading", KeyFor::Pin)),
      probe(make(window, "Pin &volts between two holes", KeyFor::Probe)),
      layFlat(make(window, "&Lay jumpers flat or arched", KeyFor::LayFlat)),
      steps(makeToggle(window, "&Steps so far", KeyFor::Steps)),
      find(make(window, "&Find in the tray", KeyFor::Find, QKeySequence::Find)),
      zoomIn(make(window, "Zoom &in", KeyFor::ZoomIn, QKeySequence::ZoomIn)),
      zoomOut(make(window, "Zoom &out", KeyFor::ZoomOut, QKeySequence::ZoomOut)),
      fit(make(window, "&Fit the bench", KeyFor::Fit)),
      fold(makeToggle(window, "Fold cards and &tray away", KeyFor::Fold)),
      fullScreen(makeToggle(window, "F&ull screen", KeyFor::FullScreen)),
      project(makeToggle(window, "&Show to the room", KeyFor::Project)),
      ink(makeToggle(window, "&Draw with ink", KeyFor::Ink)),
      wipeInk(make(window, "&Wipe the ink", KeyFor::WipeInk)),
      blank(makeToggle(window, "&Blank the screen", KeyFor::Blank)),
      nextStep(make(window, "Next step of the &lesson", KeyFor::NextStep)),
      previousStep(make(window, "Pre&vious step of the lesson", KeyFor::PreviousStep)),
      legend(make(window, "The le&gend", KeyFor::Legend)),
      record(makeToggle(window, "Record a &lesson")),
      markStep(make(window, "This is a s&tep", KeyFor::MarkStep)),
      arrows(makeToggle(window, "&Arrows", KeyFor::Arrows)),
      electrons(makeToggle(window, "Electron &flow")),
      voltage(makeToggle(window, "&Voltage", KeyFor::Voltage)),
      strips(makeToggle(window, "&Strips", KeyFor::Strips)),
      readings(makeToggle(window, "&Readings", KeyFor::Readings)),
      turned(makeToggle(window, "&Underside", KeyFor::Underside)),
      themes(new QActionGroup(window)),
      themeSystem(makeToggle(window, "As the &system")),
      themeDay(makeToggle(window, "&Day")),
      themeDark(makeToggle(window, "Dar&k")),
      themeProjector(makeToggle(window, "&Projector")),
      start(make(window, "The harbour &course", KeyFor::Course)),
      firstBuild(make(window, "Light a &first LED")),
      partHelp(make(window, "About the selected &part", KeyFor::PartHelp)),
      keys(make(window, "&Keys", KeyFor::Keys)),
      cautions(make(window, "&Cautions")) {
    for (QAction* choice : {themeSystem, themeDay, themeDark, themeProjector}) themes->addAction(choice);
}

}  // namespace tiepoint::ui
