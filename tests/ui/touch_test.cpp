// Several fingers press several buttons.

#include "desk.h"

#include <QPointingDevice>

namespace tiepoint::ui {
namespace {

class TouchTest : public Desk {
protected:
    TouchTest() {
        open(test::BenchBuilder(beacon())
                 .part("S2", "push-button", {{"1a", "A.e22"}, {"1b", "A.f22"}, {"2a", "A.e24"}, {"2b", "A.f24"}})
                 .cap("S")
                 .build());
    }
    QPointingDevice* screen() {
        static QPointingDevice* const kScreen = QTest::createTouchDevice();
        return kScreen;
    }
};

TEST_F(TouchTest, EachFingerPressesItsOwn) {
    QTest::touchEvent(&view, screen()).press(0, bodyOf("S1"), view.viewport());
    EXPECT_TRUE(live.isHeld("S1"));
    QTest::touchEvent(&view, screen()).stationary(0).press(1, bodyOf("S2"), view.viewport());
    EXPECT_TRUE(live.isHeld("S1") && live.isHeld("S2"));
    QTest::touchEvent(&view, screen()).release(0, bodyOf("S1"), view.viewport()).stationary(1);
    EXPECT_FALSE(live.isHeld("S1"));
    EXPECT_TRUE(live.isHeld("S2"));
    QTest::touchEvent(&view, screen()).release(1, bodyOf("S2"), view.viewport());
    EXPECT_FALSE(live.isHeld("S2"));
    EXPECT_EQ(document.undoStack().count(), 0) << "presses are no edits";
}

TEST_F(TouchTest, AFingerElsewhereIsAMouse) {
    QTest::touchEvent(&view, screen()).press(0, bodyOf("R1"), view.viewport());
    QTest::touchEvent(&view, screen()).release(0, bodyOf("R1"), view.viewport());
    EXPECT_TRUE(live.inputs().held.empty());
    EXPECT_TRUE(view.selection().isEmpty() || view.selection() == QStringList{"R1"});
}

}  // namespace
}  // namespace tiepoint::ui
