#pragma once
// The sentences that the core says, as data: resources/words/LANGUAGE/*.json, an object each, of ids and texts. Where a figure belongs
// a text has its name in braces, {part}, and whoever says it gives each figure by name, so that another language can put them in
// its own order. A text that depends on a count is an object: "by" names the figure, and there is a form for each count that needs one of its
// own ("1", or several, "2-4") and one for all "other". Parts, values and choices have their words in resources/parts.
// Pure but for speak(); safe from any thread.

#include "core/base/embedded.h"
#include "core/base/result.h"

#include <concepts>
#include <initializer_list>
#include <map>
#include <set>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace tiepoint {

/// A figure of a sentence by its name: text as it is shown, or a count.
struct Given {
    Given(std::string_view figure, std::string_view shown) : name(figure), text(shown) {}
    template <std::integral Count>
    Given(std::string_view figure, Count number)
        : name(figure),
          text(std::to_string(number)),
          count(static_cast<long long>(number)) {}

    std::string_view name;
    std::string text;
    long long count = -1;  ///< -1: no count
};

/// The texts of one language.
class Words {
public:
    /// Reads files of one language; an error names its file and place. Refused are ids that stand twice, forms without a count or without
    /// "other", and braces that don't close.
    static Result<Words> read(std::span<const EmbeddedFile> files);
    /// Those in resources/words/LANGUAGE, which must be there.
    static const Words& english();

    /// The text of an id with its figures in place. Unknown ids and figures are programmers' errors; of a release build the reader sees the id
    /// or the figure's name.
    std::string say(std::string_view id, std::initializer_list<Given> given) const;

    std::vector<std::string_view> ids() const;
    /// The names of the figures of a text, the count that chooses its form too.
    std::set<std::string, std::less<>> figuresOf(std::string_view id) const;

private:
    struct Form {
        long long least = 0, most = 0;  ///< the counts that it is for
        std::string text;
    };
    struct Text {
        std::string by;           ///< the count that chooses; empty: there is one form
        std::vector<Form> forms;  ///< the last is for all others
    };

    std::map<std::string, Text, std::less<>> texts_;
};

/// Says it in the language that is spoken, English unless speak() was called.
std::string say(std::string_view id, std::initializer_list<Given> given = {});

/// Several things in a row, each joined to those before it by a text with the figures {first} and {second}: `lastPair` for the last of them,
/// `pair` for those before. "D1, D2 and D3" by "list.comma" and "list.and".
std::string sayList(std::span<const std::string> things, std::string_view pair, std::string_view lastPair);
inline std::string sayList(std::span<const std::string> things, std::string_view pair) {
    return sayList(things, pair, pair);
}

/// From now on everything is said in these words, which live until others are spoken.
void speak(const Words& words);

}  // namespace tiepoint
