// The house keeps its order: what may include what, and what may lie at the top. Reads the sources themselves.

#include "app/run_program.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <regex>
#include <set>

namespace tiepoint::test {
namespace {

namespace fs = std::filesystem;

const fs::path kTop = TIEPOINT_SOURCE_DIR;

std::vector<fs::path> sourcesBelow(const std::string& folder) {
    std::vector<fs::path> sources;
    for (const auto& entry : fs::recursive_directory_iterator(kTop / folder)) {
        const auto ending = entry.path().extension();
        if (ending == ".h" || ending == ".cpp") sources.push_back(entry.path());
    }
    return sources;
}

/// What a file includes, as written between the quotes or brackets.
std::vector<std::string> includesOf(const fs::path& source) {
    static const std::regex include(R"re(#\s*include\s*[<"]([^>"]+)[>"])re");
    const std::string text = readFile(source);
    std::vector<std::string> names;
    for (auto match = std::sregex_iterator(text.begin(), text.end(), include); match != std::sregex_iterator();
         ++match) {
        names.push_back((*match)[1]);
    }
    return names;
}

struct Wall {
    const char* folder;
    const char* forbidden;  ///< pattern of includes that must not appear below the folder
    const char* why;
};

TEST(Layering, IncludesRunOneWay) {
    const Wall walls[] = {
        {"core", R"(Q[A-Z]\w*|Qt\w*/.*|ui/.*|app/.*)", "core knows neither Qt nor the layers above"},
        {"ui", R"(app/.*)", "ui doesn't know the program"},
        {"ui", R"(core/(solve/(?!operating_point)|circuit/|flow/).*|Eigen/.*)", "ui computes nothing electrical"},
        {"app", R"(core/(solve|circuit|flow|light)/.*|Eigen/.*)", "app computes nothing electrical"},
    };
    for (const Wall& wall : walls) {
        const std::regex forbidden(wall.forbidden);
        const auto sources = sourcesBelow(wall.folder);
        EXPECT_GT(sources.size(), 5u) << wall.folder;
        for (const fs::path& source : sources) {
            for (const std::string& name : includesOf(source)) {
                EXPECT_FALSE(std::regex_match(name, forbidden)) << source << " includes " << name << ": " << wall.why;
            }
        }
    }
}

TEST(Layering, TheWallsWouldCatchATrespass) {
    const fs::path trespass = scratchFile("trespass.cpp", "#include <QString>\n#include \"core/solve/island.h\"\n");
    EXPECT_EQ(includesOf(trespass), (std::vector<std::string>{"QString", "core/solve/island.h"}));
}

TEST(Layering, CoreLinksNoQt) {
    EXPECT_EQ(readFile(kTop / "core" / "CMakeLists.txt").find("Qt6::"), std::string::npos);
}

TEST(Layering, TopHoldsOnlyWhatWasAgreed) {
    const std::set<std::string> agreed{"CMakeLists.txt", "README.md", "DEVELOPERS.md", "LICENSE", "app",
                                       "core",           "ui",        "resources",     "tests"};
    for (const auto& entry : fs::directory_iterator(kTop)) {
        const std::string name = entry.path().filename();
        const bool built =
            entry.is_directory() && name.starts_with("build");  // where the two scripts build; never committed
        if (name.starts_with(".") || built) continue;
        EXPECT_TRUE(agreed.contains(name)) << name;
    }
}

TEST(Layering, NothingIsSwitchedOffOrLeftForLater) {
    // Written in pieces, so that this file doesn't find itself.
    const std::regex left(std::string("DISABLED") + "_|GTEST" + "_SKIP|#if" + " 0|\\b(TO" + "DO|FIX" + "ME|XX" +
                          "X)\\b");
    for (const char* folder : {"core", "ui", "app", "tests"}) {
        for (const fs::path& source : sourcesBelow(folder)) {
            const std::string text = readFile(source);
            EXPECT_FALSE(std::regex_search(text, left)) << source;
        }
    }
}

}  // namespace
}  // namespace tiepoint::test
