#pragma once
// What a view is put together from, each named once, in the order in which one needs the other, and who is told when one of them changes.

#include "ui/view/bench_hand.h"
#include "ui/view/bench_view.h"
#include "ui/view/fingers.h"
#include "ui/view/keyboard_hand.h"
#include "ui/view/live_picture.h"
#include "ui/view/motion.h"
#include "ui/view/part_menu.h"
#include "ui/view/room_mode.h"
#include "ui/view/view_events.h"
#include "ui/view/view_frame.h"
#include "ui/view/wheel_hand.h"

namespace tiepoint::ui {

struct ViewAssembly {
    ViewAssembly(BenchView& owner, BenchDocument& benchDocument, LiveBench& live);

    // What several of them follow.
    void followBench();  ///< the document has another one
    /// Lets go of everything, and turns the boards upright: nothing is placed from below.
    void freeHands();
    void followMotion(bool visible);
    void followZoom();
    void followTheme(const Theme& theme);
    void turnTo(const Views& views);
    /// What fills the view when it fits.
    QRectF fittedArea() const;
    QRectF neededArea() const;
    QRectF withRestOfTable(const QRectF& area) const;
    /// How large words stand at a zoom.
    WordSizes sizesAt(double pixelsPerMm) const;

    BenchView& view;
    BenchDocument& document;

    // What is shown.
    Picture picture;
    LivePicture shown;
    BenchScene scene;
    BenchMarks marks;
    Camera camera;
    Motion motion;
    RoomMode room;
    ViewFrame frame;

    // The fields over it.
    GestureRun gestures;
    ValueFields fields;
    NotePen notes;

    // The hands at it.
    BenchHand hand;
    Hovering hovering;
    PointerHand pointer;
    HoleCursor cursor;
    KnobSteps knobs;
    WheelHand wheel;
    KeyboardHand keyboard;
    Fingers fingers;
    Pinning pinning;
    PartMenu menu;
    ViewEvents events;

private:
    void followTable();
    void connectShown();
    void connectHands();

    std::size_t boards_ = 0;
    std::vector<Rect> stands_;  ///< of the boards and boxes, as they were last
};

}  // namespace tiepoint::ui
