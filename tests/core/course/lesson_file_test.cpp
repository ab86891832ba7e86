// Lessons read and written: whole or not at all, every error with its place, and the same benches again.

#include "core/course/lesson_file.h"

#include "core/bench/bench_file.h"
#include "core/course/shipped.h"

#include <gtest/gtest.h>

#include <stdexcept>
#include <string>

namespace tiepoint {
namespace {

constexpr std::string_view kSmallLesson = R"({
  "format": "tiepoint-lesson",
  "version": 1,
  "title": "Pier light",
  "minutes": 5,
  "start": {
    "format": "tiepoint-bench",
    "version": 1,
    "title": "Pier light",
    "boards": [
      {"id": "A", "kind": "half", "at": [0, 0]}
    ],
    "parts": [
      {"id": "PS1", "kind": "bench-supply", "leads": {"+": "A.top+3", "-": "A.bottom-3"}},
      {"id": "R1", "kind": "resistor", "leads": {"1": "A.c8", "2": "A.c13"}, "values": {"resistance": 330}},
      {"id": "D1", "kind": "led", "leads": {"anode": "A.e13", "cathode": "A.f13"}}
    ],
    "jumpers": [
      {"id": "W1", "ends": ["A.top+7", "A.a8"], "colour": "red"}
    ]
  },
  "steps": [
    {
      "caption": "Close the loop",
      "edits": [
        {"operation": "add", "jumper": {"id": "W2", "ends": ["A.j13", "A.bottom-11"], "colour": "black"}}
      ],
      "then": [
        {"lit": "D1"},
        {"amperes": "R1", "from": 0.008, "to": 0.01}
      ]
    },
    {
      "caption": "Off",
      "try": {"set": {"PS1.on": false}},
      "then": [
        {"dark": "D1"}
      ]
    }
  ]
}
)";

std::string lessonWith(std::string_view from, std::string_view to) {
    std::string text(kSmallLesson);
    const auto at = text.find(from);
    if (at == std::string::npos) throw std::invalid_argument("the lesson has no " + std::string(from));
    return text.replace(at, from.size(), to);
}

std::string lessonError(const std::string& text) {
    const auto read = readLesson(text);
    return read ? "read" : read.error().oneLine();
}

TEST(LessonFile, HoldsTheBenchOfEachStep) {
    const auto read = readLesson(kSmallLesson);
    ASSERT_TRUE(read.ok()) << read.error().oneLine();
    const Lesson& lesson = read->lesson;
    EXPECT_EQ(lesson.title, "Pier light");
    ASSERT_EQ(lesson.stepCount(), 2);
    EXPECT_EQ(lesson.start->jumpers.size(), 1u);
    EXPECT_EQ(lesson.benchAt(0)->jumpers.size(), 2u);
    EXPECT_EQ(*lesson.benchAt(1), *lesson.benchAt(0));
    EXPECT_EQ(situationOf(lesson, 1).bench->findPart("PS1")->stateValue(0), 0) << "what is tried is set";
    EXPECT_TRUE(read->warnings.empty());
}

TEST(LessonFile, WritesWhatItReads) {
    const auto read = readLesson(kSmallLesson);
    ASSERT_TRUE(read.ok());
    EXPECT_EQ(writeLesson(read->lesson), kSmallLesson);
}

TEST(LessonFile, AsksWhichDiagramIsTheBoards) {
    const auto read = readLesson(
        lessonWith("\"caption\": \"Off\"",
                   "\"caption\": \"Which is it?\", \"ask\": {\"question\": \"?\", \"diagrams\": 3, \"right\": 2}"));
    ASSERT_TRUE(read.ok()) << read.error().oneLine();
    const LessonStep& step = read->lesson.steps[1];
    ASSERT_EQ(step.kind, StepKind::Predict);
    EXPECT_EQ(step.ask->diagrams, 3);
    EXPECT_EQ(step.ask->answers, (std::vector<std::string>{"Diagram 1", "Diagram 2", "Diagram 3"}));
    const std::string text = writeLesson(read->lesson);
    EXPECT_EQ(text.find("answers"), std::string::npos);
    const auto again = readLesson(text);
    ASSERT_TRUE(again.ok()) << again.error().oneLine();
    EXPECT_EQ(again->lesson.steps[1].ask->diagrams, 3);
    EXPECT_EQ(writeLesson(again->lesson), text);
}

TEST(LessonFile, ShowsTheDiagramBesideTheBoard) {
    const auto read =
        readLesson(lessonWith("\"caption\": \"Off\"", "\"caption\": \"Off\", \"show\": {\"sheet\": true}"));
    ASSERT_TRUE(read.ok()) << read.error().oneLine();
    EXPECT_TRUE(read->lesson.steps[1].sheet);
    EXPECT_FALSE(read->lesson.steps[0].sheet);
    const auto again = readLesson(writeLesson(read->lesson));
    ASSERT_TRUE(again.ok()) << again.error().oneLine();
    EXPECT_TRUE(again->lesson.steps[1].sheet);
}

TEST(LessonFile, ShippedLessonsSurviveBeingWritten) {
    for (const ShippedLesson& shipped : shippedLessons()) {
        const std::string text = writeLesson(*shipped.lesson);
        const auto again = readLesson(text);
        ASSERT_TRUE(again.ok()) << shipped.name << ": " << again.error().oneLine();
        EXPECT_EQ(writeLesson(again->lesson), text) << shipped.name;
        for (int step = 0; step < again->lesson.stepCount(); ++step) {
            EXPECT_EQ(*again->lesson.benchAt(step), *shipped.lesson->benchAt(step))
                << shipped.name << " step " << step + 1;
            EXPECT_EQ(again->lesson.steps[step].then, shipped.lesson->steps[step].then);
        }
    }
}

TEST(LessonFile, ErrorsNamePlaceAndReason) {
    const std::pair<std::string, const char*> cases[] = {
        {lessonWith("\"caption\": \"Off\"", "\"kind\": \"dance\""),
         "/steps/1/kind: there is no kind of step \"dance\"; there are: show, predict, stop, build"},
        {lessonWith("\"id\": \"W2\", ", "\"id\": \"W1\", "),
         "/steps/0/edits: the edits can't be applied: the id W1 is used already"},
        {lessonWith("{\"operation\": \"add\", \"jumper\": {\"id\": \"W2\", \"ends\": [\"A.j13\", \"A.bottom-11\"], "
                    "\"colour\": \"black\"}}",
                    "{\"operation\": \"remove\", \"id\": \"D1\"}"),
         "/steps/0/then/0/lit: nothing on the bench of this step has the id \"D1\""},
        {lessonWith("{\"lit\": \"D1\"}", "{\"shines\": \"D1\"}"),
         "/steps/0/then/0: there is no such predicate; there are: lit, dark"},
        {lessonWith(", \"to\": 0.01}", "}"), "\"amperes\" needs \"from\" and \"to\""},
        {lessonWith("\"from\": 0.008", "\"from\": 1"), "\"from\" is above \"to\""},
        {lessonWith("\"PS1.on\": false", "\"PS1.volume\": 1"),
         "/steps/1/try: a bench-supply has neither state nor value volume"},
        {lessonWith("\"caption\": \"Off\"", "\"sound\": \"Off\""), "/steps/1/sound: a step has no member \"sound\""},
        {lessonWith("\"caption\": \"Off\"", "\"caption\": 3"), "/steps/1/caption: a number stands where text belongs"},
        {lessonWith("tiepoint-lesson", "tiepoint-bench"),
         "/format: the format is \"tiepoint-bench\", not \"tiepoint-lesson\""},
        {lessonWith("\"A.c13\"", "\"A.c99\""), "/start/parts/1/leads/2"},
        {lessonWith("\"minutes\": 5", "\"minutes\": -5"), "/minutes: a whole number from 0 to 600 belongs here"},
        {lessonWith("\"caption\": \"Off\"", "\"kind\": \"predict\""),
         "a step that predicts has \"ask\", and no other has"},
        {lessonWith("\"caption\": \"Off\"", "\"ask\": {\"question\": \"?\", \"answers\": [\"a\"], \"right\": 1}"),
         "a question has 2 to 4 answers, not 1"},
        {lessonWith("\"caption\": \"Off\"",
                    "\"ask\": {\"question\": \"?\", \"answers\": [\"a\", \"b\"], \"right\": 3}"),
         "the right answer is one of 1 to 2"},
        {lessonWith("\"caption\": \"Off\"", "\"ask\": {\"question\": \"?\", \"right\": 1}"),
         "/steps/1/ask: a question has either \"answers\" or \"diagrams\""},
        {lessonWith("\"caption\": \"Off\"", "\"ask\": {\"question\": \"?\", \"diagrams\": 1, \"right\": 1}"),
         "/steps/1/ask/diagrams: a question has 2 to 4 answers, not 1"},
        {lessonWith("\"caption\": \"Off\"",
                    "\"show\": {\"sheet\": true}, \"ask\": {\"question\": \"?\", "
                    "\"diagrams\": 3, \"right\": 1}"),
         "/steps/1/show/sheet: a step that asks which diagram is the board's can't show it"},
        {lessonWith("\"caption\": \"Off\"", "\"show\": {\"sheet\": 1}"), "/steps/1/show/sheet: "},
        {lessonWith("\"caption\": \"Off\"", "\"show\": {\"places\": [\"X9\"]}"),
         "/steps/1/show/places: nothing on the bench of this step is \"X9\""},
    };
    for (const auto& [text, expected] : cases)
        EXPECT_NE(lessonError(text).find(expected), std::string::npos) << expected << "\n" << lessonError(text);
}

TEST(LessonFile, PlacesErrorsOfTheStartBenchInTheLesson) {
    const auto read = readLesson(lessonWith("\"A.c13\"", "\"A.c99\""));
    ASSERT_FALSE(read.ok());
    EXPECT_EQ(read.error().place.line, 15);
}

TEST(LessonFile, OpensWhereABenchOpens) {
    const auto lesson = readTable(kSmallLesson);
    ASSERT_TRUE(lesson.ok()) << lesson.error().oneLine();
    ASSERT_TRUE(lesson->lesson);
    EXPECT_EQ(lesson->bench, *lesson->lesson->start);
    const auto bench = readTable(writeBench(lesson->bench));
    ASSERT_TRUE(bench.ok());
    EXPECT_FALSE(bench->lesson);
    EXPECT_EQ(bench->bench, lesson->bench);
    EXPECT_FALSE(readTable("{}").ok());
}

TEST(LessonFile, AnyStepIsOneEditAway) {
    for (const ShippedLesson& shipped : shippedLessons()) {
        const Lesson& lesson = *shipped.lesson;
        for (int from = -1; from < lesson.stepCount(); ++from) {
            for (int to = -1; to < lesson.stepCount(); ++to) {
                const auto moved =
                    apply(*lesson.benchAt(from), editBetween(*lesson.benchAt(from), *lesson.benchAt(to), "Step"));
                ASSERT_TRUE(moved.ok()) << shipped.name << ' ' << from << " to " << to << ": " << moved.error().message;
                EXPECT_EQ(moved->bench, *lesson.benchAt(to)) << shipped.name << ' ' << from << " to " << to;
            }
        }
    }
}

}  // namespace
}  // namespace tiepoint
