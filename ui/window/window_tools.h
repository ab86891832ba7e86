#pragma once
// What the window offers beside the bench itself: the guide, the steps so far, the page of keys, boards, the guard of its file, recent files, dropped files, pictures, notes, flat jumpers, and the
// search of the tray, and the tree for screen readers. Joins each to its action; the window only places the overlay.

#include "ui/document/file_actions.h"
#include "ui/tray/steps_row.h"
#include "ui/tray/tray.h"
#include "ui/view/bench_view.h"
#include "ui/window/actions.h"
#include "ui/window/board_menu.h"
#include "ui/window/guide_card.h"
#include "ui/window/keys_page.h"
#include "ui/window/message_bar.h"
#include "ui/window/picture_actions.h"
#include "ui/window/recent_files.h"
#include "ui/window/sheet_tools.h"

#include <QMenuBar>
#include <QObject>

namespace tiepoint::ui {

class WindowTools : public QObject {
    Q_OBJECT
public:
    struct Parts {
        BenchDocument& document;
        BenchView& view;
        LiveBench& live;
        FileActions& files;
        FileGuard& guard;
        Tray& tray;
        MessageBar& bar;
        const Actions& actions;
    };

    /// Adds its menus to the bar; overlays lie on the stage.
    WindowTools(const Parts& parts, QMenuBar& menus, QWidget* stage, QWidget* window);

    void setLook(const Look& look);
    /// `bench` is where the bench lies, `card` the second card of the row; both in the stage.
    void placeIn(const QRect& bench, const QRect& card);

    /// A new bench, and the guide that leads to a lit LED on it.
    void beginFirstBuild();

    GuideCard& guide() const { return *guide_; }
    StepsRow& steps() const { return *steps_; }
    KeysPage& keys() const { return *keys_; }
    BoardMenu& boards() const { return *boards_; }
    RecentFiles& recent() const { return *recent_; }
    PictureActions& pictures() const { return *pictures_; }
    SheetTools& sheets() const { return *sheets_; }

Q_SIGNALS:
    void arrangeWanted();  ///< something takes another height

private:
    void joinSteps();
    void joinFiles(QWidget* window);
    void joinGuard();
    void joinEdits();
    void sayAtBoard(const QString& words, const QString& board);
    void layFlat();

    Parts parts_;
    StepsRow* steps_;
    KeysPage* keys_;
    GuideCard* guide_;
    BoardMenu* boards_;
    RecentFiles* recent_;
    PictureActions* pictures_;
    SheetTools* sheets_;
    QRect bench_, card_;
};

}  // namespace tiepoint::ui
