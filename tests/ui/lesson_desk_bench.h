#pragma once
// A window that gives a lesson, worked by its keys.

#include "window_bench.h"

#include <gtest/gtest.h>

namespace tiepoint::ui {

class LessonTest : public testing::Test {
protected:
    MainWindow& window() { return desk.window(); }
    LessonDesk& lessons() { return window().lessons(); }
    LessonRun& run() { return lessons().run(); }
    const Bench& bench() { return *window().document().bench(); }

    void open(const char* name) {
        desk.restart({1920, 1080});
        window().files().openEmbedded(QString::fromLatin1(name));
        QApplication::processEvents();
        ASSERT_TRUE(run().lesson());
    }
    void press(Qt::Key key) {
        QTest::keyClick(&window().view(), key);
        QApplication::processEvents();
    }
    /// To the step in its last phase.
    void reveal() {
        while (run().isVeiled()) press(Qt::Key_PageDown);
    }
    static bool isSame(const Bench& a, Bench b) {
        b.views = a.views;
        return a == b;
    }

    WindowBench desk;
};

}  // namespace tiepoint::ui
