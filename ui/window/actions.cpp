#include "ui/window/actions.h"

namespace tiepoint::ui {
namespace {

QAction* make(QWidget* window, const char* name, const QList<QKeySequence>& keys = {}) {
    auto* action = new QAction(QString::fromUtf8(name), window);
    action->setShortcuts(keys);
    window->addAction(action);
    return action;
}

QAction* makeToggle(QWidget* window, const char* name, const QList<QKeySequence>& keys = {}) {
    QAction* action = make(window, name, keys);
    action->setCheckable(true);
    return action;
}

QList<QKeySequence> standard(QKeySequence::StandardKey key, const QKeySequence& fallback = {}) {
    QList<QKeySequence> keys = QKeySequence::keyBindings(key);
    if (!fallback.isEmpty() && !keys.contains(fallback)) keys << fallback;
    return keys;
}

}  // namespace

Actions::Actions(QWidget* window)
    : newBench(make(window, "&New bench", standard(QKeySequence::New))),
      open(make(window, "&Open…", standard(QKeySequence::Open))),
      save(make(window, "&Save", standard(QKeySequence::Save))),
      saveAs(make(window, "Save &as…", standard(QKeySequence::SaveAs, QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_S)))),
      savePicture(make(window, "Save a &picture…", {QKeySequence(Qt::CTRL | Qt::Key_E)})),
      close(make(window, "&Close", standard(QKeySequence::Close))),
      quit(make(window, "&Quit", standard(QKeySequence::Quit, QKeySequence(Qt::CTRL | Qt::Key_Q)))),
      undo(make(window, "&Undo", standard(QKeySequence::Undo))),
      redo(make(window, "&Redo", standard(QKeySequence::Redo, QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_Z)))),
      cut(make(window, "Cu&t", standard(QKeySequence::Cut))),
      copy(make(window, "&Copy", standard(QKeySequence::Copy))),
      paste(make(window, "&Paste", standard(QKeySequence::Paste))),
      duplicate(make(window, "D&uplicate", {QKeySequence(Qt::CTRL | Qt::Key_D)})),
      remove(make(window, "&Delete", {QKeySequence(Qt::Key_Delete), QKeySequence(Qt::Key_Backspace)})),
      selectAll(make(window, "Select &all", standard(QKeySequence::SelectAll))),
      rename(make(window, "Re&name the bench…", {QKeySequence(Qt::Key_F2)})),
      copyPicture(make(window, "Copy as p&icture", {QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_C)})),
      note(make(window, "N&ote…", {QKeySequence(Qt::Key_F4)})),
      pin(make(window, "P&in a reading", {QKeySequence(Qt::Key_F5)})),
      probe(make(window, "Pin &volts between two holes", {QKeySequence(Qt::SHIFT | Qt::Key_F5)})),
      layFlat(make(window, "&Lay jumpers flat or arched", {QKeySequence(Qt::Key_F6)})),
      history(makeToggle(window, "&History", {QKeySequence(Qt::CTRL | Qt::Key_H)})),
      find(make(window, "&Find in the tray", standard(QKeySequence::Find))),
      zoomIn(make(window, "Zoom &in", standard(QKeySequence::ZoomIn, QKeySequence(Qt::CTRL | Qt::Key_Equal)))),
      zoomOut(make(window, "Zoom &out", standard(QKeySequence::ZoomOut))),
      fit(make(window, "&Fit the bench", {QKeySequence(Qt::CTRL | Qt::Key_0)})),
      fold(makeToggle(window, "Fold cards and &tray away", {QKeySequence(Qt::Key_F9)})),
      fullScreen(makeToggle(window, "F&ull screen", {QKeySequence(Qt::SHIFT | Qt::Key_F11)})),
      project(makeToggle(window, "&Show to the room", {QKeySequence(Qt::Key_F11)})),
      ink(makeToggle(window, "&Draw with ink", {QKeySequence(Qt::Key_F7)})),
      wipeInk(make(window, "&Wipe the ink", {QKeySequence(Qt::Key_F8)})),
      blank(makeToggle(window, "&Blank the screen", {QKeySequence(Qt::Key_B), QKeySequence(Qt::Key_Period)})),
      arrows(makeToggle(window, "&Arrows", {QKeySequence(Qt::Key_1)})),
      electrons(makeToggle(window, "Electron &flow")),
      voltage(makeToggle(window, "&Voltage", {QKeySequence(Qt::Key_2)})),
      strips(makeToggle(window, "&Strips", {QKeySequence(Qt::Key_3)})),
      readings(makeToggle(window, "&Readings", {QKeySequence(Qt::Key_4)})),
      turned(makeToggle(window, "&Underside", {QKeySequence(Qt::Key_5)})),
      themes(new QActionGroup(window)),
      themeSystem(makeToggle(window, "As the &system")),
      themeDay(makeToggle(window, "&Day")),
      themeDark(makeToggle(window, "Dar&k")),
      themeProjector(makeToggle(window, "&Projector")),
      start(make(window, "&Benches of the harbour")),
      firstBuild(make(window, "Light a &first LED")),
      partHelp(make(window, "About the selected &part", {QKeySequence(Qt::Key_F1)})),
      cautions(make(window, "&Cautions")) {
    for (QAction* choice : {themeSystem, themeDay, themeDark, themeProjector}) themes->addAction(choice);
}

}  // namespace tiepoint::ui
