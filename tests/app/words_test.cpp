// The words that people read are the trade's, and one name stands for one thing. Reads the texts in the sources themselves.

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <regex>
#include <string>

namespace tiepoint::test {
namespace {

/// A way of saying something that gave way to a plainer one, and that one.
struct Retired {
    const char* pattern;
    const char* instead;
};

const Retired kRetired[] = {
    {"current runs", "current flows"},
    {"runs through \\{\\}[.,\"]", "flows through"},
    {"it bears|bears at most", "its maximum is"},
    {"[Ii]nner resistance", "internal resistance"},
    {"open: parted|parted, no path", "open circuit: no complete path"},
    {"[Pp]otential walk|once round the loop", "voltage around the loop"},
    {"way of the .?electrons", "electron flow"},
    {"[Tt]urned over|[Ss]een from below", "underside"},
    {"shines fully", "at full brightness"},
};

/// The quoted texts of a source, without its comments and includes.
std::string wordsIn(const std::filesystem::path& source) {
    std::ifstream file(source);
    const std::string code{std::istreambuf_iterator<char>(file), {}};
    static const std::regex kComment("//[^\n]*|#include[^\n]*"), kQuoted("\"([^\"\n]*)\"");
    const std::string bare = source.extension() == ".json" ? code : std::regex_replace(code, kComment, "");
    std::string words;
    for (auto match = std::sregex_iterator(bare.begin(), bare.end(), kQuoted); match != std::sregex_iterator(); ++match)
        words += '"' + (*match)[1].str() + "\"\n";
    return words;
}

TEST(Words, RetiredOnesDoNotComeBack) {
    int texts = 0;
    for (const char* folder : {"core", "ui", "app", "resources/parts"}) {
        for (const auto& entry :
             std::filesystem::recursive_directory_iterator(std::filesystem::path(TIEPOINT_SOURCE_DIR) / folder)) {
            const auto ending = entry.path().extension();
            if (ending != ".cpp" && ending != ".h" && ending != ".json") continue;
            const std::string words = wordsIn(entry.path());
            texts += static_cast<int>(std::count(words.begin(), words.end(), '\n'));
            for (const Retired& retired : kRetired) {
                std::smatch found;
                if (std::regex_search(words, found, std::regex(retired.pattern)))
                    ADD_FAILURE() << entry.path() << " says " << found.str() << "; better: " << retired.instead;
            }
        }
    }
    EXPECT_GT(texts, 1000) << "the texts were read";
}

}  // namespace
}  // namespace tiepoint::test
