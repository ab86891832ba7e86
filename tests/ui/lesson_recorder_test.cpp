// Recording a lesson in a real window: build, call it a step, name it, take it back, join it, save it, and open it again.

#include "core/course/lesson_file.h"
#include "window_bench.h"

#include <QFileInfo>
#include <QLineEdit>

#include <gtest/gtest.h>

namespace tiepoint::ui {
namespace {

class LessonRecorderTest : public testing::Test {
protected:
    LessonRecorderTest() {
        desk.restart({1280, 720});
        window().recorder().setAskPath(
            [this](const QString&, const FileActions::GivePath& give) { give(desk.file("pier")); });
        window().actions().record->setChecked(true);
    }
    MainWindow& window() { return desk.window(); }
    LessonRecorder& recorder() { return window().recorder(); }
    void build(const char* id, const char* kind, const char* first, const char* second) {
        Part part = makePart(*findKind(kind), id);
        part.leads = {*parseHole(first), *parseHole(second)};
        ASSERT_FALSE(window().document().push({"Add", {AddPart{part}}}));
    }
    void mark(const char* caption) {
        window().actions().markStep->trigger();
        ASSERT_TRUE(window().bar().isAsking());
        EXPECT_EQ(window().bar().phrase().echoMode(), QLineEdit::Normal) << "a caption is no pass phrase";
        QTest::keyClicks(&window().bar().phrase(), QString::fromLatin1(caption));
        button(QStringLiteral("This is a step"))->click();
    }
    QToolButton* button(const QString& word) {
        for (QToolButton* each : window().bar().buttons()) {
            if (each->text() == word) return each;
        }
        ADD_FAILURE() << "no key " << word.toStdString();
        return new QToolButton(&window());
    }
    WindowBench desk;
};

TEST_F(LessonRecorderTest, WhatIsBuiltBecomesALessonThatOpens) {
    build("R1", "resistor", "A.c8", "A.c13");
    mark("A resistor");
    build("D1", "led", "A.e13", "A.e14");
    mark("");
    ASSERT_TRUE(recorder().draft());
    ASSERT_EQ(recorder().draft()->lesson().stepCount(), 2);
    EXPECT_EQ(recorder().draft()->lesson().steps[0].caption, "A resistor");
    EXPECT_FALSE(recorder().draft()->lesson().steps[1].caption.empty()) << "named by what was done";
    EXPECT_TRUE(QFileInfo::exists(recorder().keptPath())) << "kept from the first step on";
    button(QStringLiteral("Save the lesson…"))->click();
    const QString path = desk.file("pier.lesson.json");
    ASSERT_TRUE(QFileInfo::exists(path));
    EXPECT_FALSE(QFileInfo::exists(recorder().keptPath()));
    const auto read = readLessonFile(path.toStdString());
    ASSERT_TRUE(read.ok()) << read.error().oneLine();
    EXPECT_EQ(read->lesson.stepCount(), 2);
    window().document().markSaved();
    window().openFile(path);
    ASSERT_TRUE(window().lessons().run().lesson());
    EXPECT_TRUE(window().document().filePath().isEmpty());
}

TEST_F(LessonRecorderTest, AStepIsTakenBackOrJoined) {
    build("R1", "resistor", "A.c8", "A.c13");
    mark("A resistor");
    build("D1", "led", "A.e13", "A.e14");
    mark("An LED");
    button(QStringLiteral("Join to the one before"))->click();
    EXPECT_EQ(recorder().draft()->lesson().stepCount(), 1);
    EXPECT_EQ(recorder().draft()->lesson().benchAt(0)->parts.size(), 3u);
    button(QStringLiteral("Take back"))->click();
    EXPECT_EQ(recorder().draft()->lesson().stepCount(), 2);
    button(QStringLiteral("Take back"))->click();
    EXPECT_EQ(recorder().draft()->lesson().stepCount(), 1);
    EXPECT_EQ(recorder().draft()->lesson().steps[0].caption, "A resistor");
}

TEST_F(LessonRecorderTest, AnotherBenchEndsIt) {
    window().files().newBench();
    EXPECT_FALSE(window().actions().record->isChecked());
    EXPECT_FALSE(window().actions().markStep->isEnabled());
    EXPECT_FALSE(recorder().draft());
}

}  // namespace
}  // namespace tiepoint::ui
