#pragma once
// The inside of a BenchView: holds the picture, the one gesture under way and what is under the pointer. Gestures see it as their Hand.

#include "ui/gesture/gesture.h"
#include "ui/gesture/hand.h"
#include "ui/gesture/under.h"
#include "ui/view/before.h"
#include "ui/view/bench_canvas.h"
#include "ui/view/bench_scene.h"
#include "ui/view/bench_view.h"
#include "ui/view/board_keys.h"
#include "ui/view/camera.h"
#include "ui/view/ink.h"
#include "ui/view/motion.h"
#include "ui/view/note_box.h"
#include "ui/view/value_box.h"
#include "ui/view/value_ladder.h"

#include <QElapsedTimer>

#include <map>
#include <memory>

namespace tiepoint::ui {

class BenchView::Body : public Hand, public KeyHost {
public:
    Body(BenchView& view, BenchDocument& document, LiveBench& live);
    ~Body() override;

    // Hand
    const Picture& picture() const override { return picture_; }
    BenchDocument& document() override { return document_; }
    LiveBench& live() override { return live_; }
    Marks& marks() override { return picture_.marks; }
    void showMarks() override;
    void lightNets(std::vector<int> nets) override;
    void clearMarks() override;
    void flash(const std::string& words, Point at) override;
    void setPale(const std::vector<std::string>& ids) override { scene_.setPale(ids); }
    void setBand(const std::optional<QRectF>& band) override;
    void setAtPointer(const std::optional<Part>& part, std::optional<int> jumperColour) override;
    QStringList selection() const override;
    void setSelection(const QStringList& ids) override;
    void panBy(QPointF pixels) override { camera_.panBy(pixels); }
    std::optional<int> chosenJumperColour() const override { return chosenColour_; }
    std::set<std::string>& latched() override { return latched_; }

    // KeyHost
    void beginTyping(const std::string& partId, const QString& typed) override;
    void letGo() override;
    void walk(int columns, int rows) override;
    void enter() override;
    void wire() override;
    void stepValue(int steps) override;
    std::optional<Hole> cursorHole() const override { return picture_.marks.cursor; }

    /// Fingers, in view_touch.cpp. Whether the event is the bench's.
    bool touch(const QTouchEvent& event);
    void liftFingers();

    // The keyboard, in view_keyboard.cpp
    void showCursor(const Hole& hole);
    void hideCursor();
    void restoreCursor();
    /// Presses or flips what is selected or in the cursor's hole, or lets go of it.
    void operate(bool down);
    /// Opens the field for a note: of the selected note, or a new one at the cursor, at the selected part or at the pointer.
    void beginNote() override;
    void editNote(const std::string& id);
    // Pinned readings, in view_pin.cpp
    /// Pins what the hand is at, or unpins it.
    void pinHere();
    /// Begins a reading between two holes, at the pointer or the cursor if none is given.
    void probeFrom(const std::optional<Hole>& hole);
    std::optional<Hole> holeHere() const;
    void openMenu(const QContextMenuEvent& event);
    /// Leads what is carried by arrows and Enter; whether the key was one of them.
    bool leadGesture(const QKeyEvent& event);

    // The bench and what it does
    void followDocument();
    void followLive();
    void followMotion();
    void setTheme(const Theme& theme);
    void setViews(const Views& views);
    void fit();
    void setProjecting(bool projecting);
    void followZoom();
    void wipeInk();
    Frame frame() const;

    // The pointer
    void begin(std::unique_ptr<Gesture> gesture, const Pointer& pointer);
    void press(const QMouseEvent& event);
    void move(QPointF inView, Qt::MouseButtons buttons, Qt::KeyboardModifiers modifiers);
    void release(QPointF inView, Qt::MouseButton button, Qt::KeyboardModifiers modifiers);
    void wheel(const QWheelEvent& event);
    void place(const QString& kind, const QString& preset, QPoint globalPos);
    bool followElsewhere(QObject* watched, QEvent* event);
    void leave();
    void loseFocus();
    void cancelGesture();
    bool keyToGesture(int key);

    // The frame, in view_frame.cpp
    /// Shows what is exposed, in logical pixels of the viewport.
    void paint(QPainter& painter, const QRegion& exposed);
    void followTable();
    void followCanvas();
    bool slideScreen(QPoint device);
    /// What looks otherwise than on the screen, in logical pixels of the viewport.
    QRegion takeStale();
    QRect toDevice(const QRectF& logical) const;
    QRegion toLogical(const QRegion& device) const;
    void tick();
    /// Where the ring for a room stands; nothing where there is none.
    QRect pointerRing() const;
    void paintPointerRing(QPainter& painter) const;

    BenchView& view_;
    BenchDocument& document_;
    LiveBench& live_;
    Picture picture_;
    BenchScene scene_;
    Camera camera_;
    Motion motion_;
    BenchCanvas canvas_;
    ValueBox valueBox_;
    ValueLadder ladder_;
    NoteBox noteBox_;
    BoardKeys keys_;
    std::unique_ptr<Gesture> gesture_;
    bool spaceHeld_ = false;
    bool projecting_ = false, inking_ = false;
    bool isFollowing_ = false;  ///< the canvas is about to follow
    Ink ink_;
    Before before_;

private:
    static constexpr qint64 kWheelPauseMs = 600;  ///< notches and steps of a knob closer than this are one undo step

    Pointer pointerAt(QPointF inView, Qt::MouseButton button, Qt::KeyboardModifiers modifiers) const;
    /// Calls a gesture and notes that the bench changes by its hand.
    template <class Call>
    void with(Call call) {
        inGesture_ = true;
        call(*gesture_);
        inGesture_ = false;
        if (gesture_->isFinished()) endGesture();
    }
    void endGesture();
    void pin(const Measurand& of);
    std::vector<Measurand> measurandsHere() const;
    bool pointsByMouse() const;
    void hover(QPointF inView);
    void beginAt(const Pointer& pointer);
    void liftFinger(int finger);
    /// The finding whose symbol lies there, or -1.
    int findingAt(QPointF inView) const;
    void followLadder();
    void clearHover();
    void setHover(int net, Point at, const std::string& part);
    QRectF fittedArea() const;
    void includeAll();
    void holdFrame();
    void resumeFrames();

    std::vector<int> litNets_;
    std::optional<int> chosenColour_;
    std::set<std::string> latched_;
    std::optional<Hole> keptCursor_;      ///< where the cursor was when it was hidden
    std::map<int, std::string> fingers_;  ///< the button under each, by its number
    std::string operated_;                ///< the button that the space bar holds down
    QTimer flashing_, waiting_;
    bool inGesture_ = false, dragged_ = false, buttonDown_ = false, elsewhere_ = false;
    QPointF downAt_, lastAt_;
    Qt::MouseButton downButton_ = Qt::NoButton;
    QString atPointer_;
    QRect ringDrawn_;             ///< on the screen
    std::uint64_t inkDrawn_ = 0;  ///< changes of the ink that is there
    int pressedFinding_ = -1;     ///< whose symbol the button went down on
    int wheelGesture_ = -1;
    QElapsedTimer sinceWheel_;
};

}  // namespace tiepoint::ui
