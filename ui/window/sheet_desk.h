#pragma once
// The circuit diagram and tidying in the window: their actions, the sheet, and the plan that a thread works out. The plan is shown as ghosts over
// the board and asked about before anything moves; then it is one edit.

#include "ui/document/bench_document.h"
#include "ui/document/my_drawer.h"
#include "ui/lesson/glide.h"
#include "ui/live/live_bench.h"
#include "ui/view/bench_view.h"
#include "ui/window/message_bar.h"
#include "ui/window/sheet_view.h"

#include <QAction>
#include <QMenuBar>
#include <QThread>

#include <memory>
#include <stop_token>

namespace tiepoint::ui {

class SheetDesk : public QObject {
    Q_OBJECT
public:
    struct Parts {
        BenchDocument& document;
        LiveBench& live;
        BenchView& view;
        MessageBar& bar;
        const MyDrawer& drawer;  ///< whose kit says how many jumpers there are
    };
    /// Its menu stands before `nextInBar`; the sheet lies on the stage.
    SheetDesk(const Parts& parts, QMenuBar& menus, QAction* nextInBar, QWidget* stage, QWidget* window);
    ~SheetDesk() override;

    SheetView& sheet() const { return *sheet_; }
    QAction* diagramAction() const { return diagram_; }
    QAction* tidyAction() const { return tidy_; }
    QAction* ieeeAction() const { return ieee_; }
    bool isShown() const { return diagram_->isChecked(); }
    bool isPlanning() const { return thread_ != nullptr; }
    Glide& glide() const { return *glide_; }
    /// Places the sheet: below the board, or beside it for a room. An empty frame hides it.
    void placeIn(const QRect& frame, bool beside, const Look& look);

Q_SIGNALS:
    void arrangeWanted();  ///< the sheet folds down or up

private:
    struct Work;
    void tidy();
    void offer(std::shared_ptr<Work> work);
    void moveEverything(const Edit& edit);
    void endThread();

    Parts parts_;
    SheetView* sheet_;
    Glide* glide_;  ///< of the board, once everything is moved
    QAction *diagram_, *ieee_, *tidy_;
    QThread* thread_ = nullptr;
    std::stop_source stop_;
};

}  // namespace tiepoint::ui
