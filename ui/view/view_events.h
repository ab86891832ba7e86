#pragma once
// Takes each event of the view and its viewport to whoever deals with it.

#include <QFocusEvent>
#include <QMouseEvent>

namespace tiepoint::ui {

struct ViewAssembly;

class ViewEvents {
public:
    /// The parts must outlive it.
    explicit ViewEvents(ViewAssembly& parts) : parts_(parts) {}

    /// Whether the event is dealt with; else it goes on to the view.
    bool takeOfView(QEvent& event);
    bool takeOfViewport(QEvent& event);
    /// A key that the view's own event handling leaves: Tab goes on to the next field.
    void takeKey(QKeyEvent& event);

private:
    bool openMenu(QEvent& event);
    void focusIn(const QFocusEvent& event);
    void focusOut();
    void doubleClick(const QMouseEvent& event);
    void leave();

    ViewAssembly& parts_;
};

}  // namespace tiepoint::ui
