#pragma once
// Every action of the window, with its name and shortcut. Makes them and nothing else: the window says what each does.

#include <QAction>
#include <QActionGroup>
#include <QWidget>

namespace tiepoint::ui {

struct Actions {
    /// The actions belong to the window and work anywhere in it.
    explicit Actions(QWidget* window);

    QAction *newBench, *open, *save, *saveAs, *savePicture, *close, *quit;
    QAction *undo, *redo, *cut, *copy, *paste, *duplicate, *remove, *selectAll, *rename;
    QList<QAction*> rowOfCopies;  ///< several copies at once; the data of each is how many
    QAction* turn;
    QAction *copyPicture, *note, *pin, *probe, *layFlat, *steps, *find;
    QAction *zoomIn, *zoomOut, *fit, *fold, *fullScreen, *project, *ink, *wipeInk, *blank;
    QAction *nextStep, *previousStep;  ///< of a lesson
    QAction* legend;                   ///< the legend, for a room too
    QAction *record, *markStep;        ///< a lesson is recorded; what was built is a step of it
    QAction *arrows, *electrons, *voltage, *strips, *readings, *turned;
    QActionGroup* themes;
    QAction *themeSystem, *themeDay, *themeDark, *themeProjector;
    QAction *start, *firstBuild, *partHelp, *keys, *cautions;
};

}  // namespace tiepoint::ui
