#pragma once
// While something is dragged against an edge of the view or over it, the view goes on in that direction: first after a moment, then the faster
// the farther the pointer is out. Belongs to the window's thread.

#include <QObject>
#include <QPointF>
#include <QTimer>
#include <QWidget>

namespace tiepoint::ui {

class EdgeScroll : public QObject {
    Q_OBJECT
public:
    static constexpr int kPauseMs = 200;  ///< at the edge, before anything moves

    explicit EdgeScroll(QWidget& viewport);

    /// The pointer drags something there, in pixels of the viewport.
    void follow(QPointF pointer);
    void stop() { ticking_.stop(); }

Q_SIGNALS:
    void scrolled(QPointF pixels);  ///< what is seen is to move by that

private:
    QPointF stepAt(QPointF pointer) const;
    void tick();

    QWidget& viewport_;
    QTimer ticking_;
    QPointF pointer_;
};

}  // namespace tiepoint::ui
