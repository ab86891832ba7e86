#include "core/edit/edit_file.h"

#include "core/bench/bench_file.h"
#include "support/build_bench.h"
#include "support/random_edits.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <set>

namespace tiepoint {
namespace {

using test::BenchBuilder;
using test::RandomEdits;

Bench editStart() {
    return BenchBuilder()
        .board("A", "full")
        .board("B", "mini", 70, 0)
        .part("PS1", "bench-supply", {{"+", "A.top+3"}, {"-", "A.bottom-3"}})
        .part("PS2", "usb-supply", {})
        .part("R1", "resistor", {{"1", "A.c10"}, {"2", "A.c14"}}, {{"resistance", 220}})
        .jumper("W1", "PS2.GND2", "A.j17")
        .build();
}

std::string written(const Edit& edit, const Bench& bench) {
    return fmt::format("{{\"text\": \"{}\", \"edits\": [{}]}}", "x", fmt::join(operationLines(edit, bench), ",\n"));
}

Edit readBack(const std::string& text, const Bench& bench) {
    const auto read = readEdit(text, bench);
    if (!read) {
        ADD_FAILURE() << read.error().oneLine() << "\n" << text;
        return {};
    }
    return read->edit;
}

/// How many edits fall on two benches alike: a stranger to operator== as operations are, compared by what they do.
TEST(EditFile, EveryOperationComesBackTheSame) {
    const Bench bench = editStart();
    RandomEdits random(bench, 20260401);
    for (int kind = 0; kind < RandomEdits::kKinds; ++kind) {
        for (int i = 0; i < 200; ++i) {
            const Edit edit{"x", {random.operation(kind)}};
            const std::string text = written(edit, bench);
            const Edit back = readBack(text, bench);
            ASSERT_EQ(back.operations.size(), 1u);
            EXPECT_EQ(back.name, "x");
            ASSERT_EQ(back.operations[0].index(), edit.operations[0].index()) << text;
            ASSERT_EQ(written(back, bench), text);
        }
    }
}

TEST(EditFile, WhatIsReadDoesTheSame) {
    const Bench bench = editStart();
    RandomEdits random(bench, 20260402);
    int done = 0;
    for (int i = 0; i < 4000; ++i) {
        const Edit edit = random.edit(1 + i % 4);
        const auto now = apply(bench, edit);
        const auto then = apply(bench, readBack(written(edit, bench), bench));
        ASSERT_EQ(now.ok(), then.ok());
        if (!now) {
            EXPECT_EQ(now.error().oneLine(), then.error().oneLine());
            continue;
        }
        ++done;
        ASSERT_EQ(now->bench, then->bench);
        // The way back is an edit too, with places in the lists.
        const auto back = apply(then->bench, readBack(written(now->inverse, now->bench), now->bench));
        ASSERT_TRUE(back.ok());
        ASSERT_EQ(back->bench, bench);
    }
    EXPECT_GT(done, 200);
}

TEST(EditFile, AJumperEndsInASocketThatTheEditBrings) {
    const Bench bench = editStart();
    Jumper jumper{"W9", {Socket{"PS9", 2}, *parseHole("A.j20")}, 0, false, {}};
    const Edit edit{"Plug in", {AddPart{makePart(*findKind("usb-supply"), "PS9")}, AddJumper{jumper}}};
    const auto applied = apply(bench, readBack(written(edit, bench), bench));
    ASSERT_TRUE(applied.ok()) << applied.error().oneLine();
    EXPECT_EQ(*applied->bench.findJumper("W9"), jumper);
}

TEST(EditFile, EachOperationStandsInTheTable) {
    std::set<std::string> names;
    RandomEdits random(editStart(), 1);
    for (int kind = 0; kind < RandomEdits::kKinds; ++kind) {
        const std::string line = operationLines({"", {random.operation(kind)}}, editStart()).front();
        const std::size_t begin = line.find(": \"") + 3;
        names.insert(line.substr(begin, line.find('"', begin) - begin));
    }
    const auto known = operationNames();
    EXPECT_EQ(names, std::set<std::string>(known.begin(), known.end()));
}

TEST(EditFile, SaysWhatIsWrongAndWhere) {
    const struct {
        std::string text, pointer, message;
        int column = 0;
    } table[] = {
        {"[]", "", "the file holds a list, not an object", 1},
        {"{}", "", "the member \"edits\" is missing", 1},
        {R"({"edits": 3})", "/edits", "a number stands where a list belongs", 11},
        {R"({"text": 3, "edits": []})", "/text", "a number stands where text belongs", 10},
        {R"({"edits": [], "more": 1})", "/more", "an edit has no member \"more\"", 15},
        {R"({"edits": [3]})", "/edits/0", "a number stands where an object belongs", 12},
        {R"({"edits": [{}]})", "/edits/0", "the member \"operation\" is missing", 12},
        {R"({"edits": [{"operation": 1}]})", "/edits/0/operation", "a number stands where text belongs", 26},
        {R"({"edits": [{"operation": "swap"}]})", "/edits/0/operation",
         "there is no operation \"swap\"; there are: add, remove, replace, title, reveal, surroundings", 26},
        {R"({"edits": [{"operation": "add"}]})", "/edits/0",
         "\"add\" needs one of these members: board, part, jumper, note, pinned", 12},
        {R"({"edits": [{"operation": "replace", "pinned": {}}]})", "/edits/0",
         "\"replace\" needs one of these members: board, part, jumper, note", 12},
        {R"({"edits": [{"operation": "remove", "id": "R1"}, {"operation": "remove", "id": ["R1"]}]})", "/edits/1/id",
         "a list stands where text belongs", 79},
        {R"({"edits": [{"operation": "remove", "id": "R1", "part": {}}]})", "/edits/0/part",
         "the operation has no member \"part\"", 48},
        {R"({"edits": [{"operation": "remove", "id": "R1", "place": 1}]})", "/edits/0/place",
         "the operation has no member \"place\"", 48},
        {R"({"edits": [{"operation": "add", "part": {"id": "R9", "kind": "flux"}}]})", "/edits/0/part/kind",
         "there is no kind of part \"flux\"", 62},
        {R"({"edits": [{"operation": "add", "part": {"id": "R9", "kind": "resistor", "leads": {"1": "A.z1"}}}]})",
         "/edits/0/part/leads/1", "\"A.z1\" is no hole; holes are written like A.e12 or A.top+7", 89},
        {R"({"edits": [{"operation": "add", "jumper": {"id": "W9", "ends": ["PS2.5X", "A.a1"]}}]})",
         "/edits/0/jumper/ends/0", "a usb-supply has no socket \"PS2.5X\"", 65},
        {R"({"edits": [{"operation": "add", "note": {"id": "N1", "at": "A.a1", "text": "x"}, "place": -1}]})",
         "/edits/0/place", "the place is -1; it is a whole number from 0 on", 91},
        {R"({"edits": [{"operation": "add", "note": {"id": "N1", "at": "A.a1", "text": "x"}, "place": 0.5}]})",
         "/edits/0/place", "the place is 0.5; it is a whole number from 0 on", 91},
        {R"({"edits": [{"operation": "reveal", "reveal": {"level": 9}}]})", "/edits/0/reveal/level",
         "there is no level 9; there are 0, 1, 2 and 3", 56},
        {R"({"edits": [{"operation": "title", "title": "a", "title": "b"}]})", "/edits/0/title",
         "the name \"title\" stands twice", 49},
    };
    for (const auto& [text, pointer, message, column] : table) {
        const auto read = readEdit(text, editStart());
        ASSERT_FALSE(read.ok()) << text;
        EXPECT_EQ(read.error().message, message);
        EXPECT_EQ(read.error().place.pointer, pointer) << text;
        EXPECT_EQ(read.error().place.column, column) << text;
        EXPECT_EQ(read.error().place.line, 1);
    }
}

TEST(EditFile, KeepsAndWarnsOfWhatItDoesNotKnow) {
    const std::string text =
        "{\"edits\": [\n{\"operation\": \"add\", \"part\": {\"id\": \"R9\", \"kind\": \"resistor\", "
        "\"shelf\": [ 1 ]}}]}";
    const auto read = readEdit(text, editStart());
    ASSERT_TRUE(read.ok());
    ASSERT_EQ(read->warnings.size(), 1u);
    EXPECT_EQ(read->warnings[0].oneLine(),
              "2:63: /edits/0/part/shelf: the member \"shelf\" isn't known; it is kept as it is");
    EXPECT_EQ(std::get<AddPart>(read->edit.operations[0]).part.extras, (Extras{{"shelf", "[1]"}}));
}

TEST(EditFile, ReadsAListInsideOfALargerText) {
    const std::string list = R"([{"operation": "remove", "id": "R1"}, {"operation": "remove", "id": 7}])";
    const std::string text = "{\"steps\": [{\n  \"edits\": " + list + "}]}";
    const std::size_t begin = text.find(list);
    const auto read = readOperations(text, begin, begin + list.size(), "/steps/0/edits", editStart());
    ASSERT_FALSE(read.ok());
    EXPECT_EQ(read.error().oneLine(), "2:80: /steps/0/edits/1/id: a number stands where text belongs");

    const std::string good = R"([{"operation": "remove", "id": "R1"}])";
    const auto sound = readOperations(good, 0, good.size(), "", editStart());
    ASSERT_TRUE(sound.ok());
    EXPECT_EQ(std::get<Remove>(sound->edit.operations.at(0)).id, "R1");
    EXPECT_FALSE(readOperations("{}", 0, 2, "/x", editStart()).ok());
}

}  // namespace
}  // namespace tiepoint
