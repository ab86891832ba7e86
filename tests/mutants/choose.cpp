// Chooses small random changes to sources: a comparison turned round, a bound moved by one, a sign, a constant, a piece of logic.
//
//   choose COUNT SEED FILE...
//
// prints COUNT lines "file, line, offset, length, new text, kind", parted by tabs; the same for the same seed and files. Every kind is
// as likely as the others, every place of a kind as likely as the next. A small lexer knows comments, literals and preprocessor lines; that
// binary operators have blanks around them is what the formatter sees to. Assertions are left alone: a test can't tell them from others.

#include <cctype>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <iostream>
#include <map>
#include <random>
#include <sstream>
#include <string>
#include <string_view>
#include <vector>

namespace {

struct Place {
    std::string file;
    int line = 1;
    std::size_t offset = 0, length = 0;
    std::vector<std::string> news;  ///< what may stand there instead; one is drawn
};
using Places = std::map<std::string, std::vector<Place>>;  ///< by kind of change

bool isWord(char c) { return std::isalnum(static_cast<unsigned char>(c)) || c == '_'; }
bool isDigit(char c) { return std::isdigit(static_cast<unsigned char>(c)); }
bool isBlank(char c) { return std::isspace(static_cast<unsigned char>(c)); }

struct Swap {
    std::string_view kind, text;
    std::vector<std::string> news;
};
/// Binary operators, with blanks around them. Longer ones stand before shorter ones.
const std::vector<Swap>& swaps() {
    static const std::vector<Swap> kTable = {
        {"comparison", "==", {"!="}}, {"comparison", "!=", {"=="}}, {"comparison", "<=", {">"}},
        {"comparison", ">=", {"<"}},  {"comparison", "<", {">="}},  {"comparison", ">", {"<="}},
        {"bound", "<=", {"<"}},       {"bound", ">=", {">"}},       {"bound", "<", {"<="}},
        {"bound", ">", {">="}},       {"sign", "+=", {"-="}},       {"sign", "-=", {"+="}},
        {"sign", "+", {"-"}},         {"sign", "-", {"+"}},         {"sign", "*", {"/"}},
        {"sign", "/", {"*"}},         {"logic", "&&", {"||"}},      {"logic", "||", {"&&"}},
    };
    return kTable;
}

/// Walks once through a source and notes every place that can be changed.
class Lexer {
public:
    Lexer(std::string file, std::string text, Places& places)
        : file_(std::move(file)),
          text_(std::move(text)),
          places_(places) {}

    void run() {
        while (at_ < text_.size()) step();
    }

private:
    char peek(std::size_t ahead = 0) const { return at_ + ahead < text_.size() ? text_[at_ + ahead] : '\0'; }
    bool starts(std::string_view with) const { return std::string_view(text_).substr(at_).starts_with(with); }
    void skip(std::size_t count) {
        for (; count > 0 && at_ < text_.size(); --count) line_ += text_[at_++] == '\n' ? 1 : 0;
    }
    void skipPast(std::string_view end) {
        const std::size_t found = text_.find(end, at_);
        skip(found == std::string::npos ? text_.size() - at_ : found + end.size() - at_);
    }
    void note(std::string_view kind, std::size_t length, std::vector<std::string> news) {
        places_[std::string(kind)].push_back({file_, line_, at_, length, std::move(news)});
    }

    void step() {
        const char c = peek();
        if (starts("//") || (c == '#' && onlyBlanksBefore())) return skipPast("\n");
        if (starts("/*")) return skipPast("*/");
        if (starts("R\"")) return skipRaw();
        if (c == '"' || c == '\'') return skipQuoted(c);
        if (isDigit(c)) return number();
        if (isWord(c)) return word();
        if (!isBlank(c)) return sign();
        skip(1);
    }

    bool onlyBlanksBefore() const {
        std::size_t before = at_;
        while (before > 0 && text_[before - 1] != '\n' && isBlank(text_[before - 1])) --before;
        return before == 0 || text_[before - 1] == '\n';
    }

    void skipRaw() {
        const std::size_t open = text_.find('(', at_);
        skipPast(")" + text_.substr(at_ + 2, open - at_ - 2) + "\"");
    }

    void skipQuoted(char mark) {
        skip(1);
        while (at_ < text_.size() && peek() != mark) skip(peek() == '\\' ? 2 : 1);
        skip(1);
    }

    void word() {
        std::size_t length = 0;
        while (isWord(peek(length))) ++length;
        const std::string name = text_.substr(at_, length);
        if (name == "assert" || name == "static_assert" || name == "template") return skipBrackets(name == "template");
        if (name == "true") note("constant", length, {"false"});
        if (name == "false") note("constant", length, {"true"});
        last_ = name;
        skip(length);
    }

    /// The round brackets of an assertion, or the angle brackets behind "template".
    void skipBrackets(bool angle) {
        const char open = angle ? '<' : '(', close = angle ? '>' : ')';
        while (at_ < text_.size() && peek() != open && peek() != ';') skip(1);
        int depth = 0;
        do {
            if (peek() == '"') {
                skipQuoted('"');
                continue;
            }
            depth += peek() == open ? 1 : peek() == close ? -1 : 0;
            skip(1);
        } while (depth > 0 && at_ < text_.size());
        last_.clear();
    }

    void number() {
        std::size_t length = 0;
        while (isWord(peek(length)) || peek(length) == '.' || (peek(length) == '\'' && isWord(peek(length + 1))) ||
               ((peek(length) == '-' || peek(length) == '+') && (peek(length - 1) == 'e' || peek(length - 1) == 'E') &&
                !starts("0x")))
            ++length;
        const std::string text = text_.substr(at_, length);
        const bool hex = text.starts_with("0x");
        const bool real = !hex && text.find_first_of(".eE") != std::string::npos;
        std::string value;
        for (const char c : text) {
            if (c != '\'') value += c;
        }
        const std::size_t suffix = hex ? value.find_first_of("uUlL") : value.find_first_of("uUlLfF");
        const std::string ending = suffix == std::string::npos ? "" : value.substr(suffix);
        if (real) {
            note("constant", length, {value + " * 2", value + " / 2"});
        } else {
            const unsigned long long whole = std::strtoull(value.c_str(), nullptr, 0);
            std::vector<std::string> news = {std::to_string(whole + 1) + ending};
            if (whole > 0) news.push_back(std::to_string(whole - 1) + ending);
            note("constant", length, news);
        }
        last_ = "0";
        skip(length);
    }

    void sign() {
        const bool apart = at_ > 0 && isBlank(text_[at_ - 1]);
        bool found = false;
        std::size_t longest = 1;
        for (const Swap& swap : swaps()) {
            if (!apart || !starts(swap.text) || !isBlank(peek(swap.text.size())) || last_ == "operator") continue;
            note(swap.kind, swap.text.size(), swap.news);
            longest = std::max(longest, swap.text.size());
            found = true;
        }
        if (!found) unary(longest);
        if (starts("+ 1)") || starts("- 1)") || starts("+ 1]") || starts("- 1]") || starts("+ 1;") || starts("- 1;") ||
            starts("+ 1,") || starts("- 1,"))
            note("bound", 3, {""});
        last_ = text_.substr(at_, longest);
        skip(longest);
    }

    void unary(std::size_t& length) {
        if (starts("++") || starts("--")) {
            note("sign", 2, {starts("++") ? "--" : "++"});
            length = 2;
        } else if (starts("->")) {
            length = 2;
        } else if (peek() == '-' && (isWord(peek(1)) || peek(1) == '(')) {
            note("sign", 1, {""});
        } else if (peek() == '!' && peek(1) != '=') {
            note("logic", 1, {""});
        }
    }

    std::string file_, text_;
    Places& places_;
    std::size_t at_ = 0;
    int line_ = 1;
    std::string last_;  ///< the token before
};

std::string wholeFile(const std::string& path) {
    std::ifstream in(path, std::ios::binary);
    std::ostringstream text;
    text << in.rdbuf();
    return text.str();
}

}  // namespace

int main(int argc, char** argv) {
    if (argc < 4) {
        std::cerr << "choose COUNT SEED FILE...\n";
        return 2;
    }
    Places places;
    for (int i = 3; i < argc; ++i) Lexer(argv[i], wholeFile(argv[i]), places).run();
    std::mt19937 random(static_cast<unsigned>(std::atoi(argv[2])));
    const auto below = [&](std::size_t n) { return static_cast<std::size_t>(random() % n); };
    for (const auto& [kind, all] : places) std::cerr << kind << ": " << all.size() << " places\n";
    for (int i = 0; i < std::atoi(argv[1]) && !places.empty(); ++i) {
        const auto& [kind, all] = *std::next(places.begin(), static_cast<std::ptrdiff_t>(below(places.size())));
        const Place& place = all[below(all.size())];
        const std::string& text = place.news[below(place.news.size())];
        std::cout << place.file << '\t' << place.line << '\t' << place.offset << '\t' << place.length << '\t' << text
                  << '\t' << kind << '\n';
    }
    return 0;
}
