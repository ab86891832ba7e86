// Words beside the hand stay where they can be read: within what the window shows, at every zoom.

#include "desk.h"
#include "ui/paint/live_layers.h"
#include "ui/view/bench_marks.h"

namespace tiepoint::ui {
namespace {

class Hints : public Desk {
protected:
    /// Where the words that were said last lie; they are painted over all else.
    QRectF tag() const {
        Patches patches;
        addHandMarks(patches, view.picture());
        return patches.empty() ? QRectF() : patches.back().mm();
    }
    void saysWithin(QPoint place) {
        view.marks().flash("its legs are now 2 holes apart; e to f is 3, so it doesn't fit across the gap",
                           view.toMm(place));
        const QRectF sight = view.picture().seenMm;
        ASSERT_FALSE(sight.isEmpty());
        ASSERT_FALSE(tag().isEmpty());
        EXPECT_TRUE(sight.contains(tag())) << place.x() << ' ' << place.y() << ": from " << tag().left() << " to "
                                           << tag().right() << " of " << sight.left() << " to " << sight.right();
    }
    void saysAtEveryEdge() {
        const QRect edge = view.viewport()->rect().adjusted(1, 1, -2, -2);
        for (const QPoint place :
             {edge.topLeft(), edge.topRight(), edge.bottomLeft(), edge.bottomRight(), edge.center()})
            saysWithin(place);
    }
};

TEST_F(Hints, StayInTheWindow) {
    saysAtEveryEdge();
    view.resize(900, 420);
    QApplication::processEvents();
    saysAtEveryEdge();
}

TEST_F(Hints, StayInTheWindowOverAnEnlargedBench) {
    for (int i = 0; i < 8; ++i) view.zoomAt(QPointF(view.viewport()->rect().bottomRight()), 1.25);
    QTest::qWait(200);
    saysAtEveryEdge();
}

TEST_F(Hints, OfARealDragToo) {
    open(beacon());
    view.resize(700, 420);
    QApplication::processEvents();
    const QPoint right(view.viewport()->width() - 3, view.viewport()->height() / 2);
    dragAndHold(bodyOf("R1"), right);
    ASSERT_FALSE(said().isEmpty());
    EXPECT_TRUE(view.picture().seenMm.contains(tag())) << said().toStdString();
    release(right);
}

}  // namespace
}  // namespace tiepoint::ui
