#pragma once
// What a room sees: while the bench is projected the circuit fills the view, words are large, a ring follows the pointer, and the right
// button draws with ink. Ink can be had without projecting: then the left button draws.

#include "ui/paint/ink.h"
#include "ui/view/pointer_ring.h"

#include <QObject>

namespace tiepoint::ui {

class RoomMode : public QObject {
    Q_OBJECT
public:
    /// The viewport must outlive it.
    explicit RoomMode(const QWidget& viewport) : ring_(viewport) {}

    void setProjecting(bool projecting);
    bool isProjecting() const { return ring_.isShown(); }
    void setInking(bool inking) { inking_ = inking; }
    /// The buttons that draw with ink.
    Qt::MouseButtons inkingButtons() const;
    void wipeInk();
    Ink& ink() { return ink_; }
    const Ink& ink() const { return ink_; }
    PointerRing& ring() { return ring_; }
    const PointerRing& ring() const { return ring_; }

Q_SIGNALS:
    void projectingChanged();
    void inkWiped();

private:
    Ink ink_;
    PointerRing ring_;
    bool inking_ = false;  ///< the left button draws too
};

}  // namespace tiepoint::ui
