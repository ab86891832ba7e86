// The house keeps its order: what may include what, and what may lie at the top. Reads the sources themselves.

#include "app/run_program.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <map>
#include <optional>
#include <regex>
#include <set>
#include <sstream>
#include <string>
#include <vector>

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

TEST(Layering, WidgetsDrawTheirWordsThroughAWordSheet) {
    const std::regex own(R"((\.|->)drawText\()");
    for (const char* folder : {"ui/window", "ui/cards", "ui/tray", "ui/view"}) {
        const auto sources = sourcesBelow(folder);
        EXPECT_GT(sources.size(), 5u) << folder;
        for (const fs::path& source : sources)
            EXPECT_FALSE(std::regex_search(readFile(source), own))
                << source << " draws words that nobody measures: see ui/theme/words.h";
    }
}

/// The folders of a layer from the lowest up. Each may include from itself and from those before it, never from one after it.
struct Order {
    std::string layer;
    std::vector<std::string> folders;
};

const std::vector<Order> kOrders = {
    {"core", {"base",     "instant", "light",  "board",     "parts",   "words",   "bench", "nets",     "circuit",
              "netlist",  "edit",    "flow",   "sizing",    "slips",   "solve",   "time",  "scope",    "variants",
              "snapshot", "meter",   "spread", "behaviour", "truth",   "hunt",    "judge", "findings", "course",
              "lesson",   "why",     "doctor", "compare",   "diagram", "planner", "sheet"}},
    {"ui",
     {"theme", "live", "paint", "scene", "compare", "export", "document", "tray", "gesture", "view", "sheet", "cards",
      "lesson", "access", "window"}},
};

/// Where a path below the layer, such as core/bench/bench.h, stands in the order; nothing if it lies elsewhere, -1 if its folder
/// isn't in the order.
std::optional<int> rankOf(const Order& order, const std::string& path) {
    const std::string beginning = order.layer + "/";
    if (!path.starts_with(beginning)) return std::nullopt;
    const std::string folder = path.substr(beginning.size(), path.find('/', beginning.size()) - beginning.size());
    const auto found = std::find(order.folders.begin(), order.folders.end(), folder);
    return found == order.folders.end() ? -1 : static_cast<int>(found - order.folders.begin());
}

/// Includes that run up, as "folder/file.cpp includes folder/other.h".
std::vector<std::string> upwardIncludes(const Order& order, const fs::path& top, const fs::path& source) {
    std::vector<std::string> upward;
    const std::string from = fs::relative(source, top).generic_string();
    const int own = rankOf(order, from).value_or(-1);
    for (const std::string& name : includesOf(source)) {
        const std::optional<int> other = rankOf(order, name);
        if (other && (*other < 0 || own < 0 || *other > own)) upward.push_back(from + " includes " + name);
    }
    return upward;
}

TEST(Layering, FoldersIncludeOnlyFromThoseBelow) {
    for (const Order& order : kOrders) {
        for (const fs::path& source : sourcesBelow(order.layer)) {
            for (const std::string& upward : upwardIncludes(order, kTop, source)) ADD_FAILURE() << upward;
        }
    }
}

TEST(Layering, TheOrderNamesEveryFolderOnce) {
    for (const Order& order : kOrders) {
        std::multiset<std::string> there;
        for (const auto& entry : fs::directory_iterator(kTop / order.layer)) {
            if (entry.is_directory()) there.insert(entry.path().filename());
        }
        EXPECT_EQ(std::multiset(order.folders.begin(), order.folders.end()), there) << order.layer;
    }
}

TEST(Layering, AnIncludeUpwardIsSeen) {
    const Order order{"core", {"base", "parts", "bench"}};
    const fs::path top = scratchFolder() / "house";
    fs::create_directories(top / "core" / "parts");
    const fs::path source = top / "core" / "parts" / "up.h";
    std::ofstream(source) << "#include \"core/base/result.h\"\n#include \"core/parts/kind.h\"\n#include <vector>\n"
                          << "#include \"core/bench/bench.h\"\n#include \"core/nowhere/else.h\"\n";
    EXPECT_EQ(upwardIncludes(order, top, source), (std::vector<std::string>{
                                                      "core/parts/up.h includes core/bench/bench.h",
                                                      "core/parts/up.h includes core/nowhere/else.h",
                                                  }));
}

TEST(Layering, TheWallsWouldCatchATrespass) {
    const fs::path trespass = scratchFile("trespass.cpp", "#include <QString>\n#include \"core/solve/island.h\"\n");
    EXPECT_EQ(includesOf(trespass), (std::vector<std::string>{"QString", "core/solve/island.h"}));
}

/// Quoted texts of a source that are a kind's name. Comments don't count.
std::set<std::string> kindNamesIn(const std::string& text, const std::set<std::string>& kinds) {
    static const std::regex comment("//[^\n]*"), quoted("\"([a-z0-9-]+)\"");
    const std::string code = std::regex_replace(text, comment, "");
    std::set<std::string> named;
    for (auto match = std::sregex_iterator(code.begin(), code.end(), quoted); match != std::sregex_iterator();
         ++match) {
        if (kinds.contains((*match)[1])) named.insert((*match)[1]);
    }
    return named;
}

TEST(Layering, NoCodeKnowsAKindByItsName) {
    std::set<std::string> kinds;
    for (const auto& entry : fs::directory_iterator(kTop / "resources" / "parts"))
        kinds.insert(entry.path().stem().string());
    ASSERT_TRUE(kinds.contains("resistor"));
    EXPECT_EQ(kindNamesIn("if (kind.name == \"led\") // \"lamp\"", kinds), std::set<std::string>{"led"});
    // Packages may be named as the one kind that they are made for.
    const fs::path packages = kTop / "core" / "parts" / "packages";
    const fs::path painters = kTop / "ui" / "paint" / "packages" / "package_painter.cpp";
    for (const char* folder : {"core", "ui"}) {
        for (const fs::path& source : sourcesBelow(folder)) {
            if (source.parent_path() == packages || source == painters) continue;
            for (const std::string& name : kindNamesIn(readFile(source), kinds))
                ADD_FAILURE() << source << " knows \"" << name << "\": ask the kind what it says of itself";
        }
    }
}

/// What a line at the left edge of an unnamed namespace declares: a type, a function or a value.
std::optional<std::string> declaredIn(const std::string& line) {
    static const std::regex none(
        "(\\s|[}/#]|template|namespace|TEST|TYPED_TEST|INSTANTIATE|class \\w+;|struct \\w+;|using \\w+::|using "
        "namespace).*");
    static const std::regex type("(?:class |struct |enum class |enum |using (?=\\w+ =))(\\w+).*");
    static const std::regex other("[^=({]*?(\\w+)\\s*(?:\\[[^\\]]*\\])?\\s*[=({;].*");
    std::smatch match;
    if (line.empty() || std::regex_match(line, none)) return std::nullopt;
    if (std::regex_match(line, match, type) || std::regex_match(line, match, other)) return match[1];
    return std::nullopt;
}

std::set<std::string> namesOfUnnamedNamespaces(const std::string& text) {
    std::set<std::string> names;
    std::istringstream lines(text);
    bool inside = false;
    for (std::string line; std::getline(lines, line);) {
        if (line == "namespace {") inside = true;
        if (line == "}  // namespace") inside = false;
        const auto name = inside ? declaredIn(line) : std::nullopt;
        if (name) names.insert(*name);
    }
    return names;
}

// Sources are compiled in groups, and which of them stand together changes with every new one.
TEST(Layering, NamesInUnnamedNamespacesAreUniqueInALibrary) {
    EXPECT_EQ(namesOfUnnamedNamespaces(
                  "namespace a {\nint no();\nnamespace {\n\nconstexpr int kOne = 1;\nclass Two {\n    int inner;\n};\n"
                  "std::vector<int> three(int four) {\n    five();\n}\nconst char* const kSix[] = {};\n"
                  "}  // namespace\nint out() {}\n"),
              (std::set<std::string>{"kOne", "Two", "three", "kSix"}));
    const std::vector<std::vector<const char*>> libraries = {
        {"core"},     {"ui"},       {"app"}, {"tests/core", "tests/references", "tests/fuzz", "tests/support"},
        {"tests/ui"}, {"tests/app"}};
    for (const auto& folders : libraries) {
        std::map<std::string, std::string> sourceOf;
        for (const char* folder : folders) {
            for (const fs::path& source : sourcesBelow(folder)) {
                for (const std::string& name : namesOfUnnamedNamespaces(readFile(source))) {
                    const auto [known, isNew] = sourceOf.emplace(name, source.string());
                    EXPECT_TRUE(isNew) << name << " stands in " << known->second << " and in " << source;
                }
            }
        }
        EXPECT_GT(sourceOf.size(), 20u) << folders.front();
    }
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
