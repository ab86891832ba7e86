// Damaged files by the thousand: the reader must neither crash nor hang, an error must be one line with its
// place, and what it does accept must be a valid bench that survives a round trip. Seeds are fixed, so that a
// failure can be repeated.

#include "core/bench/bench_file.h"
#include "fuzz/formats.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>
#include <random>
#include <string>
#include <string_view>
#include <vector>

namespace tiepoint::fuzz {
namespace {

std::vector<std::string> wholeFiles() { return findFormat("bench").samples(); }

/// What must hold for any bytes at all. Returns whether they were a bench.
bool check(const std::string& text) {
    bool accepted = false;
    EXPECT_NO_THROW(accepted = findFormat("bench").take(text));
    return accepted;
}

class Damager {
public:
    Damager(std::vector<std::string> files, unsigned seed) : files_(std::move(files)), random_(seed) {}

    std::string next() {
        std::string text = anyFile();
        for (int count = 1 + below(3); count > 0 && !text.empty(); --count) damage(text);
        return text;
    }

private:
    int below(std::size_t n) { return static_cast<int>(random_() % std::max<std::size_t>(n, 1)); }
    const std::string& anyFile() { return files_[below(files_.size())]; }

    void damage(std::string& text) {
        static const std::string kPieces[] = {
            "{",
            "}",
            "[",
            "]",
            "\"",
            ",",
            ":",
            "\\",
            "\\u0000",
            "\\ud800",
            "null",
            "true",
            "1e999",
            "-1e999",
            "NaN",
            "1e308",
            "-0",
            "0",
            std::string(1, '\0'),
            "\xFF",
            "\xC0\x80",
            "\xED\xA0\x80",
            "\xEF\xBB\xBF",
            "\n",
            "\r",
            "\x1b[2J",
            "\u2028",
            "//",
            "/**/",
            "\"id\": \"A\", ",
            "\"leads\": {}, ",
            "\"kind\": \"led\", ",
            "\"version\": 2, ",
            "\"title\": [], ",
            "{\"a\": {\"a\": 1}}",
        };
        const std::size_t at = below(text.size() + 1);
        const std::size_t length = std::min<std::size_t>(below(40), text.size() - at);
        switch (below(8)) {
            case 0:
                if (at < text.size()) text[at] = static_cast<char>(below(256));
                break;  // a byte
            case 1:
                if (at < text.size()) text[at] = static_cast<char>(text[at] ^ (1 << below(8)));
                break;  // a bit
            case 2:
                text.resize(at);
                break;  // cut off
            case 3:
                text.erase(at, length);
                break;  // a piece lost
            case 4:
                text.insert(at, text.substr(at, length));
                break;  // a piece twice
            case 5:
                text.insert(at, kPieces[below(std::size(kPieces))]);
                break;
            case 6:
                text.replace(at, length, kPieces[below(std::size(kPieces))]);
                break;
            default: {  // spliced with another
                const std::string& other = anyFile();
                text = text.substr(0, at) + other.substr(below(other.size()));
            }
        }
    }

    std::vector<std::string> files_;
    std::mt19937 random_;
};

TEST(DamagedFiles, NeverBreakTheReader) {
    int accepted = 0;
    constexpr int kFiles = 6000;
    Damager damager(wholeFiles(), 20240229);
    for (int i = 0; i < kFiles && !::testing::Test::HasFailure(); ++i) {
        SCOPED_TRACE(i);
        accepted += check(damager.next()) ? 1 : 0;
    }
    EXPECT_GT(accepted, 50) << "some damage is harmless; if none is, the reader refuses good files";
    EXPECT_LT(accepted, kFiles / 2) << "most damage must be seen";
}

TEST(DamagedEdits, NeverBreakTheReader) {
    const Format& format = findFormat("edit");
    int accepted = 0;
    constexpr int kTexts = 6000;
    Damager damager(format.samples(), 20260403);
    for (int i = 0; i < kTexts && !::testing::Test::HasFailure(); ++i) {
        const std::string text = damager.next();
        EXPECT_NO_THROW(accepted += format.take(text) ? 1 : 0) << text;
    }
    EXPECT_GT(accepted, 50);
    EXPECT_LT(accepted, kTexts / 2);
}

TEST(DamagedFiles, NeverBreakTheReaderOfCircuits) {
    const Format& circuit = findFormat("circuit");
    int accepted = 0;
    constexpr int kFiles = 4000;
    Damager damager(circuit.samples(), 20260101);
    for (int i = 0; i < kFiles && !::testing::Test::HasFailure(); ++i) {
        SCOPED_TRACE(i);
        EXPECT_NO_THROW(accepted += circuit.take(damager.next()) ? 1 : 0);
    }
    EXPECT_GT(accepted, 50);
    EXPECT_LT(accepted, kFiles / 2);
}

TEST(DamagedFiles, HostileCircuitsEndSoon) {
    const Format& circuit = findFormat("circuit");
    const auto partsOf = [](int count, auto&& leads) {
        std::string text = R"({"format":"tiepoint-circuit","version":1,"parts":[)";
        for (int i = 0; i < count; ++i) {
            text += i == 0 ? "" : ",";
            text += R"({"id":"R)" + std::to_string(i) + R"(","kind":"resistor","leads":{)" + leads(i) + "}}";
        }
        return text + "]}";
    };
    const std::pair<const char*, std::string> table[] = {
        {"a net for each lead", partsOf(100'000, [](int i) { return fmt::format(R"("1":"a{}","2":"b{}")", i, i); })},
        {"one net for all", partsOf(100'000, [](int) { return std::string(R"("1":"a","2":"a")"); })},
        {"many leads", partsOf(1,
                               [](int) {
                                   std::string leads = R"("1":"a")";
                                   for (int i = 0; i < 100'000; ++i) leads += fmt::format(R"(,"k{}":null)", i);
                                   return leads;
                               })},
    };
    for (const auto& [name, text] : table) {
        SCOPED_TRACE(name);
        const auto start = std::chrono::steady_clock::now();
        EXPECT_NO_THROW(circuit.take(text));
        const std::chrono::duration<double> seconds = std::chrono::steady_clock::now() - start;
        EXPECT_LT(seconds.count(), 10.0);  // linear ones take well under a second, quadratic ones minutes
    }
}

TEST(DamagedFiles, CutAnywhereAreRefused) {
    std::string file = wholeFiles().front();
    while (file.back() == '\n') file.pop_back();
    for (std::size_t length = 0; length < file.size(); ++length) EXPECT_FALSE(check(file.substr(0, length))) << length;
    EXPECT_TRUE(check(file));
}

TEST(DamagedFiles, AnyValueOfAnyTypeIsJudged) {
    // Each value of a small file is replaced by each other kind of value.
    const std::string file = wholeFiles().back();
    for (std::size_t at = 0; at < file.size(); ++at) {
        if (std::string_view("[{\"0123456789-n").find(file[at]) == std::string_view::npos) continue;
        for (const char* value :
             {"null", "true", "0", "-1.5", "\"\"", "\"A.a1\"", "[]", "{}", "[[0]]", "{\"id\":{}}", "1e400"}) {
            for (std::size_t length : {1u, 2u, 3u, 6u})
                check(std::string(file).replace(at, std::min(length, file.size() - at), value));
        }
    }
}

TEST(DamagedFiles, HostileShapesEndSoon) {
    const auto repeated = [](std::string_view piece, int times) {
        std::string text;
        for (int i = 0; i < times; ++i) text += piece;
        return text;
    };
    const auto numbered = [](int count) {
        std::string members;
        for (int i = 0; i < count; ++i) members += (i == 0 ? "\"k" : ",\"k") + std::to_string(i) + "\":0";
        return members;
    };
    const std::string head = R"({"format":"tiepoint-bench","version":1,)";
    const std::pair<const char*, std::string> table[] = {
        {"deep lists", head + "\"x\":" + repeated("[", 1'000'000)},
        {"deep objects", head + "\"x\":" + repeated("{\"a\":", 500'000)},
        {"deep and closed", head + "\"x\":" + repeated("[", 100'000) + repeated("]", 100'000) + "}"},
        {"the deepest allowed", head + "\"x\":" + repeated("[", 63) + repeated("]", 63) + "}"},
        {"one level deeper", head + "\"x\":" + repeated("[", 64) + repeated("]", 64) + "}"},
        {"many members", head + numbered(200'000) + "}"},
        {"many members of a part",
         head + "\"parts\":[{\"id\":\"R1\",\"kind\":\"resistor\"," + numbered(100'000) + "}]}"},
        {"many leads",
         head + "\"parts\":[{\"id\":\"R1\",\"kind\":\"resistor\",\"leads\":{" + numbered(100'000) + "}}]}"},
        {"many ends", head + "\"jumpers\":[{\"id\":\"W1\",\"ends\":[" + repeated("\"A.a1\",", 200'000) + "\"\"]}]}"},
        {"many numbers", head + "\"parts\":[" + repeated("0,", 1'000'000) + "0]}"},
        {"many lists", head + "\"x\":[" + repeated("[],", 1'000'000) + "[]]}"},
        {"a long number", head + "\"x\":" + repeated("7", 1'000'000) + "}"},
        {"a long text", head + "\"title\":\"" + repeated("\\u00e9", 300'000) + "\"}"},
        {"many boards in one place", head + "\"boards\":[{\"id\":\"A\",\"kind\":\"mini\"}" +
                                         repeated(",{\"id\":\"A\",\"kind\":\"mini\"}", 30'000) + "]}"},
        {"only white space", repeated(" \n", 2'000'000)},
        {"only quotes", repeated("\"", 1'000'000)},
        {"only commas", head + repeated(",", 1'000'000)},
        {"long line, late error", head + "\"x\":[" + repeated("\"é\",", 500'000) + "@"},
    };
    for (const auto& [name, text] : table) {
        SCOPED_TRACE(name);
        const auto start = std::chrono::steady_clock::now();
        check(text);
        const std::chrono::duration<double> seconds = std::chrono::steady_clock::now() - start;
        EXPECT_LT(seconds.count(), 10.0);  // linear ones take well under a second, quadratic ones minutes
    }
    EXPECT_TRUE(readBench(table[3].second).ok());
    const auto tooDeep = readBench(table[4].second);
    ASSERT_FALSE(tooDeep.ok());
    EXPECT_NE(tooDeep.error().message.find("64"), std::string::npos);
}

}  // namespace
}  // namespace tiepoint::fuzz
