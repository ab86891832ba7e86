#pragma once
// The frame of a view: what of the screen has to be painted anew, and painting it: the bench, ink on it, and the ring about the pointer.
// Belongs to the window's thread.

#include "ui/view/bench_canvas.h"
#include "ui/view/bench_marks.h"
#include "ui/view/camera.h"
#include "ui/view/room_mode.h"

#include <QObject>
#include <QTimer>

namespace tiepoint::ui {

class ViewFrame : public QObject {
    Q_OBJECT
public:
    /// All must outlive it.
    struct Needs {
        QGraphicsView& view;
        const Picture& picture;
        const BenchScene& scene;
        const BenchMarks& marks;
        const Camera& camera;
        RoomMode& room;
    };
    explicit ViewFrame(const Needs& needs);

    /// What the picture shows has changed: finds what of the screen that changes, once for all that changes before the frame.
    void follow();
    /// Paints all anew.
    void followAll() { viewport().update(); }
    /// Keeps the frame on the screen for a moment, until `resume`: the answer to an edit is about to come.
    void hold();
    void resume();
    /// Shows what is exposed, in logical pixels of the viewport.
    void paint(QPainter& painter, const QRegion& exposed);
    /// Makes a little ahead of what moving arrows need.
    void prewarm() { canvas_.prewarm(); }
    /// Where the symbols of findings stand, mm.
    std::span<const FindingMark> findingMarks() const { return canvas_.findingMarks(needs_.picture); }

private:
    QWidget& viewport() const { return *needs_.view.viewport(); }
    Frame frame() const;
    QRectF contentMm() const;
    void update();
    void followTable();
    void followCanvas();
    bool slideScreen(QPoint device);
    /// What looks otherwise than on the screen, in logical pixels of the viewport.
    QRegion takeStale();
    void followScreen(const QRegion& exposed);
    QRect toDevice(const QRectF& logical) const;

    /// Where anything is drawn, as it was found for a bench on its table.
    struct Content {
        std::shared_ptr<const Layout> layout;
        std::shared_ptr<const Table> table;
        WordSizes sizes;
        QRectF mm;
    };

    Needs needs_;
    mutable Content content_;
    BenchCanvas canvas_;
    QTimer waiting_;
    bool isFollowing_ = false;    ///< the canvas is about to follow
    QRect ringDrawn_;             ///< on the screen
    std::uint64_t inkDrawn_ = 0;  ///< changes of the ink that is there
};

}  // namespace tiepoint::ui
