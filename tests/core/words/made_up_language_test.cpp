// A language that nobody speaks: the English texts in broad letters. Whatever the core says of benches, sound and slipped, must be in it;
// only names of things and holes, and the words of the catalogue, stay as they are.

#include "core/base/embedded.h"
#include "core/findings/reveal.h"
#include "core/findings/rules.h"
#include "core/findings/unfinished.h"
#include "core/lesson/first_build.h"
#include "core/parts/preferred.h"
#include "core/slips/slip.h"
#include "core/why/explain.h"
#include "core/why/walk_words.h"
#include "core/words/words.h"
#include "support/compact_bench.h"
#include "support/sound_benches.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cctype>
#include <deque>
#include <functional>
#include <regex>
#include <set>

namespace tiepoint::test {
namespace {

/// Broad letters (U+FF21, U+FF41) outside of braces; the rest as it is.
std::string inBroadLetters(std::string_view text) {
    std::string broad;
    bool inFigure = false;
    for (const char c : text) {
        inFigure = c == '{' || (inFigure && c != '}');
        if (!inFigure && std::isalpha(static_cast<unsigned char>(c))) {
            const int code = std::isupper(static_cast<unsigned char>(c)) ? 0xBCA1 + (c - 'A') : 0xBD81 + (c - 'a');
            broad += {static_cast<char>(0xEF), static_cast<char>(code >> 8), static_cast<char>(code & 0xFF)};
        } else {
            broad += c;
        }
    }
    return broad;
}

/// The English files in broad letters: texts and forms, not ids and names of counts.
const Words& broadWords() {
    static const Words kWords = [] {
        static std::deque<std::string> texts;
        static const std::regex text(R"re(("(?:[^"\\]|\\.)*")(\s*:)?)re"), chooser(R"("by"\s*:\s*$)");
        std::vector<EmbeddedFile> files;
        for (const EmbeddedFile& file : embeddedFiles()) {
            if (!file.name.starts_with("words/en/")) continue;
            const std::string json(file.text);
            std::string broad;
            std::size_t from = 0;
            for (auto match = std::sregex_iterator(json.begin(), json.end(), text); match != std::sregex_iterator();
                 ++match) {
                broad += json.substr(from, static_cast<std::size_t>(match->position()) - from);
                from = static_cast<std::size_t>(match->position() + match->length());
                const bool isName = (*match)[2].matched || std::regex_search(broad, chooser);
                broad += isName ? match->str() : inBroadLetters(match->str());
            }
            texts.push_back(broad + json.substr(from));
            files.push_back({file.name, texts.back()});
        }
        return Words::read(files).value();
    }();
    return kWords;
}

class SpokenBroadly {
public:
    SpokenBroadly() { speak(broadWords()); }
    ~SpokenBroadly() { speak(Words::english()); }
    SpokenBroadly(const SpokenBroadly&) = delete;
    SpokenBroadly& operator=(const SpokenBroadly&) = delete;
};

/// Everything that is said of one bench.
class Sayings {
public:
    explicit Sayings(const Bench& bench) {
        const auto shared = std::make_shared<const Bench>(bench);
        const auto snapshot = evaluate(shared);
        const std::vector<Finding> findings = inspect(*snapshot).findings;
        for (const Finding& finding : findings) {
            add(finding.text);
            if (finding.mend) add(finding.mend->text);
        }
        for (const Finding& place : revealed(bench, findings, Reveal::Place)) add(place.text);
        for (const OpenEnd& end : unfinished(*snapshot, false).open) {
            add(end.what);
            add(end.place);
        }
        for (int part = 0; part < static_cast<int>(bench.parts.size()); ++part) {
            const Answer answer = explain(*snapshot, part);
            add(answer.question);
            for (const Cause& cause : answer.chain) add(cause.text);
            for (const Remedy& remedy : answer.remedies) {
                add(remedy.text);
                add(remedy.outcome);
            }
            const PotentialWalk walk = walkPotential(*snapshot, part);
            add(whyNoWalk(*snapshot, walk, part));
            for (const std::string& division : divisionsInWords(*snapshot, walk)) add(division);
        }
        for (const int reached : {0, 4, kFirstBuildSteps}) {
            const FirstBuildAdvice advice = firstBuildAdvice(*snapshot, reached);
            if (advice.action.empty()) continue;  // the words of a step are those of its lesson's file
            for (const std::string& text : {advice.title, advice.text, advice.action}) add(text);
        }
    }

    const std::vector<std::string>& all() const { return all_; }

private:
    void add(const std::string& text) {
        if (!text.empty()) all_.push_back(text);
    }
    std::vector<std::string> all_;
};

std::string inSmallLetters(std::string text) {
    std::ranges::transform(text, text.begin(), [](unsigned char c) { return std::tolower(c); });
    return text;
}

/// Names of the catalogue, of colours and of rails, the longest first.
std::vector<std::string> catalogueNames() {
    std::set<std::string> names{"top", "bottom"};
    const auto add = [&](std::string_view name) { names.insert(inSmallLetters(std::string(name))); };
    for (const PartKind& kind : catalogue()) {
        for (const LeadSpec& lead : kind.leads) {
            add(lead.name);
            const std::string_view told =
                std::string_view(lead.description).substr(0, lead.description.find_first_of(",;"));
            add(told.starts_with("the ") ? told.substr(4) : told);
        }
        for (const auto* specs : {&kind.values, &kind.state}) {
            for (const ValueSpec& spec : *specs) {
                add(spec.label);
                for (const Choice& choice : spec.choices) add(choice.label);
            }
        }
    }
    for (const JumperColour& colour : jumperColours()) add(colour.name);
    for (int band = 0; band <= static_cast<int>(BandColour::White); ++band)
        add(bandName(static_cast<BandColour>(band)));
    std::vector<std::string> sorted(names.begin(), names.end());
    std::erase(sorted, "");
    std::ranges::stable_sort(sorted, std::greater(), &std::string::size);
    return sorted;
}

/// Words of a saying that are in English letters and no names of the catalogue.
std::vector<std::string> englishIn(const std::string& saying) {
    static const std::vector<std::string> kNames = catalogueNames();
    static const std::regex word("[a-z]{3,}");
    std::string left = inSmallLetters(saying);
    const auto isLetter = [&](std::size_t at) {
        return at < left.size() && std::isalpha(static_cast<unsigned char>(left[at]));
    };
    for (const std::string& name : kNames) {
        for (std::size_t at = left.find(name); at != std::string::npos; at = left.find(name, at + 1)) {
            const bool isWhole = (at == 0 || !isLetter(at - 1)) && !isLetter(at + name.size());
            if (isWhole) left.replace(at, name.size(), name.size(), ' ');
        }
    }
    std::vector<std::string> english;
    for (auto match = std::sregex_iterator(left.begin(), left.end(), word); match != std::sregex_iterator(); ++match)
        english.push_back(match->str());
    return english;
}

/// The benches of the tests, as they are and with the slips that change most of what is said.
std::vector<Bench> saidBenches() {
    constexpr std::size_t kSlipsEach = 12;
    std::vector<Bench> benches;
    for (const SoundBench& sound : soundBenches()) {
        const Bench bench = compactBench(sound.text);
        benches.push_back(bench);
        const Ground ground(buildLayout(std::make_shared<const Bench>(bench)));
        const std::vector<tiepoint::Slip> all = allSlips(ground, 100'000);
        for (std::size_t i = 0; i < kSlipsEach && !all.empty(); ++i)
            benches.push_back(apply(bench, editOf(bench, all[i * all.size() / kSlipsEach])).value().bench);
    }
    return benches;
}

TEST(MadeUpLanguage, IsReadAndSpoken) {
    EXPECT_EQ(inBroadLetters("Ab {cd} e"), "Ａｂ {cd} ｅ");
    EXPECT_EQ(broadWords().ids(), Words::english().ids());
    const SpokenBroadly broadly;
    EXPECT_EQ(say("why.throw.press", {{"switch", "S1"}}), "ｐｒｅｓｓ S1");
    EXPECT_EQ(say("count.holes", {{"count", 2}}), "ｔｗｏ ｈｏｌｅｓ");
    EXPECT_EQ(englishIn("PS1 ｉｓ flowing: no ａｎｏｄｅ, the anode at top+3"),
              (std::vector<std::string>{"flowing", "the"}));
}

TEST(MadeUpLanguage, ChangesAllThatIsSaidOfBenches) {
    std::set<std::string> said;
    for (const Bench& bench : saidBenches()) {
        const Sayings english(bench);
        const SpokenBroadly broadly;
        const Sayings broad(bench);
        ASSERT_EQ(english.all().size(), broad.all().size());
        for (const std::string& saying : broad.all()) {
            EXPECT_EQ(englishIn(saying), std::vector<std::string>{}) << saying;
            said.insert(saying);
        }
    }
    EXPECT_GT(said.size(), 1000u);
}

TEST(MadeUpLanguage, ChangesAllSlips) {
    for (const SoundBench& sound : soundBenches()) {
        const Bench bench = compactBench(sound.text);
        const Ground ground(buildLayout(std::make_shared<const Bench>(bench)));
        const SpokenBroadly broadly;
        for (const tiepoint::Slip& slip : allSlips(ground, 100'000)) {
            for (const std::string& saying : {slipInWords(bench, slip), mendInWords(bench, slip), seenInWords(slip)})
                EXPECT_EQ(englishIn(saying), std::vector<std::string>{}) << saying;
        }
    }
}

}  // namespace
}  // namespace tiepoint::test
