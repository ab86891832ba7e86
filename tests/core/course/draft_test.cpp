// Lessons made by doing: what was built becomes steps, and every change of them can be taken back.

#include "core/course/draft.h"

#include "core/course/lesson_file.h"
#include "support/build_bench.h"

#include <gtest/gtest.h>

namespace tiepoint {
namespace {

/// A resistor, an LED and a jumper, pushed in one after the other.
class LessonDraftTest : public testing::Test {
protected:
    LessonDraftTest() : draft(std::make_shared<const Bench>(makeNewBench())) {
        builder.part("R1", "resistor", {{"1", "A.c8"}, {"2", "A.c13"}});
        EXPECT_TRUE(draft.record(builder.build(), "A resistor").ok());
        builder.part("D1", "led", {{"anode", "A.e13"}, {"cathode", "A.e14"}});
        builder.jumper("A.a8", "A.top+8");
        EXPECT_TRUE(draft.record(builder.build(), "An LED, and plus", "slowly").ok());
    }
    std::vector<std::string> captions() const {
        std::vector<std::string> all;
        for (const LessonStep& step : draft.lesson().steps) all.push_back(step.caption);
        return all;
    }
    test::BenchBuilder builder{makeNewBench()};
    LessonDraft draft;
};

TEST_F(LessonDraftTest, WhatWasBuiltAreItsSteps) {
    ASSERT_EQ(draft.lesson().stepCount(), 2);
    EXPECT_EQ(*draft.lesson().benchAt(1), builder.build());
    const auto again = readLesson(writeLesson(draft.lesson()));
    ASSERT_TRUE(again.ok()) << again.error().oneLine();
    EXPECT_EQ(*again->lesson.benchAt(1), builder.build());
}

TEST_F(LessonDraftTest, StepsArePartedAndJoined) {
    ASSERT_TRUE(draft.split(1, 1, "Plus").ok());
    EXPECT_EQ(captions(), (std::vector<std::string>{"A resistor", "An LED, and plus", "Plus"}));
    EXPECT_EQ(draft.lesson().benchAt(1)->jumpers.size(), 0u);
    EXPECT_EQ(*draft.lesson().benchAt(2), builder.build());
    ASSERT_TRUE(draft.merge(1).ok());
    EXPECT_EQ(draft.lesson().stepCount(), 2);
    EXPECT_EQ(*draft.lesson().benchAt(1), builder.build());
    EXPECT_FALSE(draft.split(0, 1, "nothing to part").ok());
}

TEST_F(LessonDraftTest, AnOrderThatCannotBeBuiltIsRefused) {
    ASSERT_TRUE(draft.move(0, 1).ok()) << "resistor and LED don't need each other";
    EXPECT_EQ(captions().front(), "An LED, and plus");
    Bench changed = builder.build();
    changed.parts[changed.partIndex("R1")].values[0] = 1000;
    ASSERT_TRUE(draft.record(changed, "Another resistor").ok());
    const auto before = captions();
    const auto moved = draft.move(2, 0);
    ASSERT_FALSE(moved.ok());
    EXPECT_NE(moved.error().message.find("step 1"), std::string::npos) << moved.error().message;
    EXPECT_EQ(captions(), before) << "nothing is half done";
}

TEST_F(LessonDraftTest, EverythingIsTakenBackAndDoneAgain) {
    ASSERT_TRUE(draft.reword(0, "Push a resistor in", "mind the gap").ok());
    ASSERT_TRUE(draft.remove(1).ok());
    EXPECT_EQ(draft.lesson().stepCount(), 1);
    draft.undo();
    EXPECT_EQ(draft.lesson().stepCount(), 2);
    draft.undo();
    EXPECT_EQ(captions().front(), "A resistor");
    draft.redo();
    EXPECT_EQ(captions().front(), "Push a resistor in");
    while (draft.canUndo()) draft.undo();
    EXPECT_EQ(draft.lesson().stepCount(), 0);
    draft.undo();
    EXPECT_EQ(draft.lesson().stepCount(), 0);
    EXPECT_FALSE(draft.reword(0, "x", "y").ok()) << "there is no step";
}

}  // namespace
}  // namespace tiepoint
