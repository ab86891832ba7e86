// Code and texts agree: each id that code says has a text, each figure of the text is given and no other, and no text is left over. Reads the
// sources themselves.

#include "core/words/words.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cctype>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <regex>

namespace tiepoint {
namespace {

namespace fs = std::filesystem;
using Names = std::set<std::string, std::less<>>;

/// Literals of a piece of code, without its comments, in their order.
std::vector<std::string> literalsOf(const std::string& code) {
    std::vector<std::string> literals;
    for (std::size_t i = 0; i < code.size(); ++i) {
        if (code.compare(i, 2, "//") == 0) {
            i = std::min(code.find('\n', i), code.size());
        } else if (code[i] == '\'' && i > 0 && std::isalnum(static_cast<unsigned char>(code[i - 1]))) {
            continue;  // between digits
        } else if (code[i] == '\'' && i + 2 < code.size()) {
            i = code.find('\'', i + (code[i + 1] == '\\' ? 3 : 2));
            if (i == std::string::npos) break;
        } else if (code[i] == '"') {
            std::string literal;
            for (++i; i < code.size() && code[i] != '"'; ++i) {
                if (code[i] == '\\') ++i;
                literal += code[i];
            }
            literals.push_back(literal);
        }
    }
    return literals;
}

/// What stands between the parenthesis at a place and the one that closes it.
std::string argumentsAt(const std::string& code, std::size_t open) {
    int depth = 0;
    bool inText = false;
    for (std::size_t i = open; i < code.size(); ++i) {
        if (code[i] == '"' && code[i - 1] != '\\') inText = !inText;
        if (inText) continue;
        if (code[i] == '(' || code[i] == '{') ++depth;
        if (code[i] == ')' || code[i] == '}') --depth;
        if (depth == 0) return code.substr(open + 1, i - open - 1);
    }
    return {};
}

/// The names of the figures given in a call's list of figures: of each pair the first.
Names namesGiven(const std::string& list) {
    Names names;
    int depth = 0;
    for (std::size_t i = 0; i < list.size(); ++i) {
        if (list[i] == '(') ++depth;
        if (list[i] == ')') --depth;
        if (list[i] == '{') {
            ++depth;
            const std::size_t quote = list.find_first_not_of(" \n", i + 1);
            if (depth == 2 && quote != std::string::npos && list[quote] == '"')
                names.insert(list.substr(quote + 1, list.find('"', quote + 1) - quote - 1));
        }
        if (list[i] == '}') --depth;
        if (list[i] == '"') i = list.find('"', i + 1);
    }
    return names;
}

/// One call of say(): the ids that it may say, and the figures that it gives.
struct Call {
    std::string where;
    std::vector<std::string> ids;
    Names given;
};

std::vector<Call> callsIn(const std::string& where, const std::string& code) {
    static const std::regex call(R"((^|[^A-Za-z_.:])say\()");
    std::vector<Call> calls;
    for (auto match = std::sregex_iterator(code.begin(), code.end(), call); match != std::sregex_iterator(); ++match) {
        const std::string all = argumentsAt(code, static_cast<std::size_t>(match->position() + match->length() - 1));
        const std::size_t list = std::min(all.find(", {{"), all.size());
        const std::size_t broken = std::min(all.find(",\n"), list);
        const std::size_t end = all.find('{') == std::string::npos ? all.size() : std::min(list, broken);
        calls.push_back({where, literalsOf(all.substr(0, end)), namesGiven(all.substr(end))});
    }
    return calls;
}

struct Source {
    std::string where, code;
};

std::vector<Source> coreSources() {
    std::vector<Source> sources;
    const fs::path top = TIEPOINT_SOURCE_DIR;
    for (const char* layer : {"core", "ui", "app"}) {
        for (const auto& entry : fs::recursive_directory_iterator(top / layer)) {
            if (entry.path().extension() != ".cpp" && entry.path().extension() != ".h") continue;
            if (entry.path().parent_path() == top / "core" / "words") continue;
            std::ifstream file(entry.path());
            sources.push_back({fs::relative(entry.path(), top).generic_string(),
                               {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()}});
        }
    }
    return sources;
}

/// Whether a literal is meant to be an id: dotted words that begin as one of the ids does.
bool isMeantAsId(const std::string& literal, const Names& beginnings) {
    static const std::regex dotted(R"([a-z]+(\.[A-Za-z0-9-]+)+)");
    return std::regex_match(literal, dotted) && beginnings.contains(literal.substr(0, literal.find('.')));
}

TEST(WordsInCode, CallsAreReadAsWritten) {
    const auto calls = callsIn("x",
                               "return say(\"a.b\", {{\"p\", id(\"q\", {1})},\n  {\"n\", count}}); other.say(\"c\");\n"
                               "say(far ? \"a.c\" : \"a.d\"); text = say(table[i].title, {{\"x\", y}});");
    ASSERT_EQ(calls.size(), 3u);
    EXPECT_EQ(calls[0].ids, std::vector<std::string>{"a.b"});
    EXPECT_EQ(calls[0].given, (Names{"p", "n"}));
    EXPECT_EQ(calls[1].ids, (std::vector<std::string>{"a.c", "a.d"}));
    EXPECT_EQ(calls[1].given, Names{});
    EXPECT_EQ(calls[2].ids, std::vector<std::string>{});
    EXPECT_EQ(calls[2].given, Names{"x"});
    EXPECT_EQ(literalsOf("most = 160'000; text(\"a\", '\"')"), std::vector<std::string>{"a"});
    EXPECT_EQ(literalsOf("// \"no\"\n'\"', \"a\\\"b\" \"c\""), (std::vector<std::string>{"a\"b", "c"}));
}

TEST(WordsInCode, EveryFigureIsGivenAndNoOther) {
    std::size_t told = 0;
    for (const Source& source : coreSources()) {
        for (const Call& call : callsIn(source.where, source.code)) {
            for (const std::string& id : call.ids) {
                if (id.find('.') == std::string::npos) continue;  // of the condition that chooses
                EXPECT_EQ(call.given, Words::english().figuresOf(id)) << call.where << " says " << id;
                ++told;
            }
        }
    }
    EXPECT_GT(told, 50u);
}

TEST(WordsInCode, EveryIdHasATextAndEveryTextIsSaid) {
    const auto ids = Words::english().ids();
    const Names known(ids.begin(), ids.end());
    Names beginnings, used;
    for (const std::string& id : known) beginnings.insert(id.substr(0, id.find('.')));
    for (const Source& source : coreSources()) {
        for (const std::string& literal : literalsOf(source.code)) {
            if (!isMeantAsId(literal, beginnings)) continue;
            EXPECT_TRUE(known.contains(literal)) << source.where << " says " << literal << ", which has no text";
            used.insert(literal);
        }
    }
    for (const std::string& id : known) EXPECT_TRUE(used.contains(id)) << "nobody says " << id;
}

/// Where sentences stand in code no more. The table of rules tells contributors what each is for.
bool isWithoutSentences(const std::string& where) {
    static const std::vector<std::string> kFolders = {"core/findings/", "core/lesson/", "core/meter/", "core/slips/",
                                                      "core/why/"};
    return where != "core/findings/rules.cpp" &&
           std::ranges::any_of(kFolders, [&](const std::string& folder) { return where.starts_with(folder); });
}

/// Names of figures in JSON; people read them through words of their own.
const Names kFigureNames = {"current now", "current turned round", "leads alone", "rails in halves",
                            "resistance without it"};

TEST(WordsInCode, NoSentenceStandsInCode) {
    static const std::regex sentence(R"([A-Za-z']+,? [a-z{][A-Za-z'}]*.*)");
    std::size_t looked = 0;
    for (const Source& source : coreSources()) {
        if (!isWithoutSentences(source.where)) continue;
        ++looked;
        for (const std::string& literal : literalsOf(source.code)) {
            if (kFigureNames.contains(literal)) continue;
            EXPECT_FALSE(std::regex_search(literal, sentence)) << source.where << " has words of its own: " << literal;
        }
    }
    EXPECT_GT(looked, 50u);
}

}  // namespace
}  // namespace tiepoint
