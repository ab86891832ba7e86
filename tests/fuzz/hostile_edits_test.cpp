// Edits of shapes that nobody writes: the reader ends soon with each.

#include "fuzz/formats.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <string>
#include <string_view>

namespace tiepoint::fuzz {
namespace {

TEST(HostileEdits, EndSoon) {
    const auto repeated = [](std::string_view piece, int times) {
        std::string text;
        for (int i = 0; i < times; ++i) text += piece;
        return text;
    };
    const auto edit = [](const std::string& operations) { return "{\"edits\":[" + operations + "]}"; };
    std::string notes, parts;
    for (int i = 0; i < 9'999; ++i) {
        notes += fmt::format(R"({}{{"operation":"add","note":{{"id":"N{}","at":"A.a1","text":"x"}},"place":0}})",
                             i > 0 ? "," : "", i);
        parts +=
            fmt::format(R"({}{{"operation":"add","part":{{"id":"X{}","kind":"usb-supply"}}}})", i > 0 ? "," : "", i);
    }
    const struct {
        const char* name;
        std::string text;
        bool accepted;
    } table[] = {
        {"no operation", edit(""), true},
        {"many notes", edit(notes), true},
        {"many parts", edit(parts), true},
        {"many operations", edit(repeated(R"({"operation":"remove","id":"A"},)", 200'000) + "{}"), false},
        {"many numbers", edit(repeated("0,", 1'000'000) + "0"), false},
        {"deep lists", edit(repeated("[", 1'000'000)), false},
        {"a deep part",
         edit(R"({"operation":"add","part":{"id":"R1","kind":"resistor","x":)" + repeated("[", 40) + repeated("]", 40) +
              "}}"),
         true},
        {"many members of an operation", edit("{\"operation\":\"title\"" + repeated(",\"title\":\"x\"", 100'000) + "}"),
         false},
        {"many ends",
         edit(R"({"operation":"add","jumper":{"id":"W1","ends":[)" + repeated("\"A.a1\",", 200'000) + "\"\"]}}"),
         false},
        {"a long title", edit("{\"operation\":\"title\",\"title\":\"" + repeated("\\u00e9", 300'000) + "\"}"), true},
    };
    for (const auto& [name, text, accepted] : table) {
        SCOPED_TRACE(name);
        bool taken = false;
        EXPECT_NO_THROW(taken = findFormat("edit").take(text));
        EXPECT_EQ(taken, accepted);
    }
}

}  // namespace
}  // namespace tiepoint::fuzz
