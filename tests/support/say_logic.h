#pragma once
// Reads expressions in words and says whether they hold: the tests' own reading, which shares nothing with core/truth.

#include <map>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

namespace tiepoint::test {

/// "S1 AND (S2 OR NOT S3)" for given switches. Terms of one bracket have to be joined by one word, as the program promises to
/// beginners, who know no precedence.
class SaidLogic {
public:
    explicit SaidLogic(const std::string& words) {
        std::string spaced;
        for (const char c : words) spaced += c == '(' || c == ')' ? std::string{' ', c, ' '} : std::string{c};
        std::istringstream stream(spaced);
        for (std::string word; stream >> word;) words_.push_back(word);
    }

    bool holds(const std::map<std::string, bool>& switches) {
        switches_ = &switches;
        at_ = 0;
        const bool said = joined();
        if (at_ != words_.size()) throw std::runtime_error("words left over");
        return said;
    }
    /// How many names of switches it has.
    int names() const {
        int count = 0;
        for (const std::string& word : words_)
            count += word != "AND" && word != "OR" && word != "XOR" && word != "NOT" && word != "(" && word != ")";
        return count;
    }

private:
    bool joined() {
        bool said = term();
        std::string by;
        while (at_ < words_.size() && words_[at_] != ")") {
            const std::string word = words_[at_++];
            if (!by.empty() && by != word) throw std::runtime_error("two words in one bracket");
            by = word;
            const bool next = term();
            if (word == "AND")
                said = said && next;
            else if (word == "OR")
                said = said || next;
            else if (word == "XOR")
                said = said != next;
            else
                throw std::runtime_error("unknown word " + word);
        }
        return said;
    }

    bool term() {
        const std::string word = words_.at(at_++);
        if (word == "NOT") return !term();
        if (word == "always" || word == "never") return word == "always";
        if (word != "(") return switches_->at(word);
        const bool said = joined();
        if (words_.at(at_++) != ")") throw std::runtime_error("a bracket isn't closed");
        return said;
    }

    std::vector<std::string> words_;
    std::size_t at_ = 0;
    const std::map<std::string, bool>* switches_ = nullptr;
};

}  // namespace tiepoint::test
