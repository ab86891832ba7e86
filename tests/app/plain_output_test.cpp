// Text out of a file, and the name of a file, on a terminal: text and nothing else, on both outputs and in the log; in JSON the same text,
// escaped.

#include "app/run_program.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace tiepoint::test {
namespace {

/// A title that would colour a terminal, name its window, turn the line round and break it.
const std::string kTitle = "Lamp \x1b[31m\x1b]0;gone\x07 \u009b32m \u202eback\u202c <b>&</b>\nsolved: all well\r\x7f";
const std::string kTitleShown =
    "Lamp \\u001b[31m\\u001b]0;gone\\u0007 \\u009b32m \\u202eback\\u202c <b>&</b>\\u000asolved: all well\\u000d\\u007f";

/// The beacon with that title, a note, and members that nobody knows.
std::string disguisedBench(const std::string& name = "disguised.bench.json") {
    auto bench = nlohmann::json::parse(readFile(harbourBench("beacon-lamp")));
    bench["title"] = kTitle;
    bench["notes"] = {{{"id", "N1"}, {"at", "A.a20"}, {"text", kTitle}}};
    bench["mo\x1b[2Jre"] = 1;
    bench["parts"][0]["x\u202ey"] = true;
    return scratchFile(name, bench.dump());
}

/// Whether no byte of a text commands a terminal: no C0 but line feeds, no DEL, no C1, no mark of direction; and it is UTF-8.
bool isHarmless(const std::string& text) {
    for (const char c : text) {
        const auto byte = static_cast<unsigned char>(c);
        if ((byte < 0x20 && c != '\n') || byte == 0x7f) return false;
    }
    for (int c1 = 0x80; c1 <= 0x9f; ++c1)
        if (text.find(std::string("\xc2") + static_cast<char>(c1)) != std::string::npos) return false;
    for (const char* mark :
         {"\u202a", "\u202b", "\u202c", "\u202d", "\u202e", "\u2066", "\u2067", "\u2068", "\u2069", "\u2028", "\u2029"})
        if (text.find(mark) != std::string::npos) return false;
    return nlohmann::json(text).dump(-1, ' ', false, nlohmann::json::error_handler_t::replace).find("\uFFFD") ==
           std::string::npos;
}

struct Spoken {
    const char* name;
    std::vector<std::string> arguments;  ///< the bench follows the first
    bool tellsTitle = true;

    friend void PrintTo(const Spoken& spoken, std::ostream* out) { *out << spoken.name; }
};

class PlainOutput : public testing::TestWithParam<Spoken> {
protected:
    static std::vector<std::string> about(const std::string& bench, bool json) {
        std::vector<std::string> arguments = GetParam().arguments;
        arguments.insert(arguments.begin() + 1, bench);
        if (json) arguments.push_back("--json");
        return arguments;
    }
};

TEST_P(PlainOutput, IsHarmlessAsText) {
    const Ran ran = runProgram(about(disguisedBench(), false));
    EXPECT_NE(ran.code, 2) << ran.error;
    EXPECT_TRUE(isHarmless(ran.output)) << ran.output;
    EXPECT_TRUE(isHarmless(ran.error)) << ran.error;
    EXPECT_EQ(lineCount(ran.error), 2) << "a warning for each member that isn't known";
    EXPECT_NE(ran.error.find("mo\\u001b[2Jre"), std::string::npos) << ran.error;
    EXPECT_NE(ran.error.find("x\\u202ey"), std::string::npos) << ran.error;
    if (!GetParam().tellsTitle) return;
    EXPECT_EQ(ran.output.substr(0, kTitleShown.size()), kTitleShown) << "the title can't begin a second line";
}

TEST_P(PlainOutput, IsHarmlessAsJsonAndSaysTheSame) {
    const Ran ran = runProgram(about(disguisedBench(), true));
    EXPECT_TRUE(isHarmless(ran.output)) << ran.output;
    EXPECT_EQ(nlohmann::json::parse(ran.output)["title"].get<std::string>(), kTitle);
}

INSTANTIATE_TEST_SUITE_P(Commands, PlainOutput,
                         testing::Values(Spoken{"solve", {"solve"}}, Spoken{"nets", {"nets"}},
                                         Spoken{"check", {"check"}},
                                         Spoken{"checkKeptBack", {"check", "--reveal", "0"}},
                                         Spoken{"truth", {"truth"}}, Spoken{"why", {"why", "D1"}, false}),
                         [](const testing::TestParamInfo<Spoken>& each) { return std::string(each.param.name); });

TEST(PlainErrors, NamesOfFilesAndWordsOfTheCommandLine) {
    const std::string evil = (scratchFolder() / "no\x1b[31m\u202esuch\nfile \xff\xf0\x1b.bench.json").string();
    for (const std::vector<std::string>& arguments :
         {std::vector<std::string>{"solve", evil},
          {"render", harbourBench("beacon-lamp"), "-o", evil},
          {"solve", harbourBench("beacon-lamp"), "--hold", "\x1b[31mS1"},
          {"parts", "\u009b1m"},
          {"solve", harbourBench("beacon-lamp"), "--\x1b[5m"},
          {"why", harbourBench("beacon-lamp"), "D\x1b\u202e"},
          {"render", harbourBench("beacon-lamp"), "-o", "x.png", "--theme", "\x1b]0;x\x07"}}) {
        const Ran ran = runProgram(arguments);
        EXPECT_EQ(ran.code, 2);
        EXPECT_EQ(ran.output, "");
        EXPECT_EQ(lineCount(ran.error), 1) << ran.error;
        EXPECT_TRUE(isHarmless(ran.error)) << ran.error;
        EXPECT_NE(ran.error.find("\\u0"), std::string::npos) << "what was left out is told: " << ran.error;
    }
}

TEST(PlainErrors, TheLogIsPlainToo) {
    const auto state = scratchFolder() / "plain-state";
    const std::string file = disguisedBench("with\x1b[31m\u202ename.bench.json");
    const Ran ran = runProgram({"--verbose", "nets", file}, {"XDG_STATE_HOME=" + state.string()});
    EXPECT_EQ(ran.code, 0);
    EXPECT_TRUE(isHarmless(ran.error)) << ran.error;
    const std::string log = readFile(state / "tiepoint" / "tiepoint.log");
    EXPECT_NE(log.find("with\\u001b[31m\\u202ename"), std::string::npos) << log;
    EXPECT_TRUE(isHarmless(log)) << log;
    EXPECT_EQ(lineCount(log), lineCount(ran.error)) << "one line for each thing said";
}

}  // namespace
}  // namespace tiepoint::test
