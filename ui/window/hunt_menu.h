#pragma once
// Begins a fault hunt from the bench on the table: asks for a number, has the slip hidden beside the window, asks about unsaved work and lays
// the bench of the hunt in its place. The same bench and number give the same hunt on every computer.

#include "ui/document/file_actions.h"
#include "ui/live/questions.h"
#include "ui/window/message_bar.h"

#include <QAction>
#include <QMenu>
#include <QObject>

namespace tiepoint::ui {

class HuntMenu : public QObject {
    Q_OBJECT
public:
    struct Parts {
        BenchDocument& document;
        FileActions& files;
        MessageBar& bar;
        Questions& questions;
    };
    /// Adds its action to the menu and to the window.
    HuntMenu(const Parts& parts, QMenu& menu, QWidget* window);

    QAction* action() const { return action_; }

private:
    void askNumber();
    void begin(const QString& typed);
    void take(const HuntAnswer& answer);

    Parts parts_;
    QAction* action_;
    std::shared_ptr<const Bench> asked_;  ///< the bench that is being prepared; null: none
};

}  // namespace tiepoint::ui
