#pragma once
// The class's kit in the window: chosen from a file, kept between starts, and obeyed: by the tray, by new benches, by mends through the drawer, and
// by lessons, which it offers to fit. Says what a bench needs that the kit lacks. Window's thread only.

#include "ui/document/file_actions.h"
#include "ui/document/my_drawer.h"
#include "ui/tray/tray.h"
#include "ui/window/message_bar.h"

#include <QAction>
#include <QMenu>
#include <QObject>
#include <QThread>

#include <stop_token>

namespace tiepoint::ui {

class KitDesk : public QObject {
    Q_OBJECT
public:
    using GivePath = std::function<void(const QString& path)>;
    struct Parts {
        BenchDocument& document;
        FileActions& files;
        MyDrawer& drawer;
        Tray& tray;
        MessageBar& bar;
    };
    /// Adds its actions to the menu.
    KitDesk(const Parts& parts, QMenu& menu, QWidget* window);
    ~KitDesk() override;

    /// How a person is asked for a file; tests answer in their place.
    void setAskPath(std::function<void(const GivePath&)> ask) { askPath_ = std::move(ask); }
    QAction* chooseAction() const { return choose_; }
    QAction* usualAction() const { return usual_; }
    QAction* withoutAction() const { return without_; }
    QAction* lackingAction() const { return lacking_; }
    QAction* fitAction() const { return fit_; }
    bool isFitting() const { return thread_ != nullptr; }

private:
    struct Fit;
    void choose(const QString& path);
    void follow();
    void sayLacking();
    void fitTheLesson();
    void offer(const std::shared_ptr<Fit>& work);
    void endThread();

    Parts parts_;
    std::function<void(const GivePath&)> askPath_;
    QAction *choose_, *usual_, *without_, *lacking_, *fit_;
    QThread* thread_ = nullptr;
    std::stop_source stop_;
};

}  // namespace tiepoint::ui
