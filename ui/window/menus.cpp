#include "ui/window/menus.h"

#include <QMenu>

namespace tiepoint::ui {
namespace {

/// Adds actions in order; a null is a separating line.
void add(QMenu* menu, std::initializer_list<QAction*> actions) {
    for (QAction* action : actions) {
        if (action)
            menu->addAction(action);
        else
            menu->addSeparator();
    }
}

}  // namespace

void fillMenus(QMenuBar& bar, const Actions& a) {
    add(bar.addMenu(QStringLiteral("&File")), {a.newBench, a.open, a.start, nullptr, a.save, a.saveAs, a.savePicture,
                                               nullptr, a.record, a.markStep, nullptr, a.close, a.quit});
    QMenu* edit = bar.addMenu(QStringLiteral("&Edit"));
    add(edit, {a.undo, a.redo, a.steps, nullptr, a.cut, a.copy, a.copyPicture, a.paste, a.duplicate});
    edit->addMenu(QStringLiteral("Copies in a ro&w"))->addActions(a.rowOfCopies);
    add(edit, {a.turn, a.remove, nullptr, a.selectAll, a.find, nullptr, a.layFlat, a.note, a.pin, a.probe, a.rename});
    QMenu* view = bar.addMenu(QStringLiteral("&View"));
    add(view, {a.arrows,  a.electrons, a.voltage, a.strips,   a.readings,     a.turned, nullptr, a.zoomIn,
               a.zoomOut, a.fit,       nullptr,   a.fold,     a.fullScreen,   nullptr,  a.ink,   a.wipeInk,
               a.blank,   nullptr,     a.legend,  a.nextStep, a.previousStep, nullptr});
    add(view->addMenu(QStringLiteral("&Theme")), {a.themeSystem, nullptr, a.themeDay, a.themeDark, a.themeProjector});
    bar.addAction(a.project);  // a key of its own: for who has no hand free for F11
    add(bar.addMenu(QStringLiteral("&Help")), {a.firstBuild, a.partHelp, a.keys, a.cautions});
}

}  // namespace tiepoint::ui
