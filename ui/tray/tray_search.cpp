// Each typed word must be found somewhere: the beginning of a word of the name counts more than of the family or the search words, and
// these more than anything in the help. Quantities are no words: a part has one exactly or not at all, except that a number without a
// unit may be the beginning of a value while somebody types.

#include "ui/tray/tray_search.h"

#include "ui/theme/plain_text.h"
#include "ui/theme/qs.h"
#include "ui/tray/tray_wish.h"

#include <QRegularExpression>
#include <QStringList>

#include <algorithm>

namespace tiepoint::ui {
namespace {

enum Worth { kNowhere = 0, kInHelp = 1, kInKind = 4, kInName = 8, kExactName = 12 };

const QStringList kJumperWords{QStringLiteral("jumper"), QStringLiteral("wire"), QStringLiteral("lead"),
                               QStringLiteral("cable"), QStringLiteral("connect")};

QStringList typedWords(const QString& text) {
    static const QRegularExpression kBetween(QStringLiteral("[^\\p{L}\\p{N}.\u03A9]+"));
    return text.toLower().split(kBetween, Qt::SkipEmptyParts);
}

bool beginsAny(const QStringList& words, const QString& typed) {
    return std::any_of(words.begin(), words.end(), [&](const QString& word) { return word.startsWith(typed); });
}

/// What is known of one item, in words.
struct SearchEntry {
    TrayItem item;
    QStringList name, kind, help;
};

SearchEntry entryOf(const TrayFamily& family, const TrayItem& item) {
    SearchEntry entry{item, typedWords(item.label), typedWords(family.name), {}};
    if (!item.part) {
        entry.kind << kJumperWords;
        return entry;
    }
    const PartKind& kind = *item.part->kind;
    entry.kind << typedWords(qs(kind.label)) << typedWords(qs(kind.name));
    for (const std::string& word : kind.searchWords) entry.kind << typedWords(qs(word));
    entry.help = typedWords(qs(kind.help.what));
    return entry;
}

std::vector<SearchEntry> allEntries() {
    std::vector<SearchEntry> entries;
    for (const TrayFamily& family : trayFamilies())
        for (const TrayItem& item : family.items) entries.push_back(entryOf(family, item));
    return entries;
}

int worthOfWord(const SearchEntry& entry, const QString& word) {
    if (entry.item.part && entry.name.contains(word))
        return kExactName;  // a colour alone means a light before a jumper
    if (beginsAny(entry.name, word)) return kInName;
    if (beginsAny(entry.kind, word)) return kInKind;
    return beginsAny(entry.help, word) ? kInHelp : kNowhere;
}

int worthOfQuantity(const SearchEntry& entry, const SaidQuantity& quantity) {
    if (!entry.item.part) return kNowhere;
    if (hasQuantity(*entry.item.part, quantity)) return kExactName;
    return quantity.unit.empty() && beginsAny(entry.name, qs(quantity.text).toLower()) ? kInName : kNowhere;
}

bool sameValues(const Part& a, const Part& b) {
    for (int i = 0; i < static_cast<int>(a.kind->values.size()); ++i)
        if (a.value(i) != b.value(i)) return false;
    return true;
}

/// What was typed, and what suits it.
class TraySearch {
public:
    explicit TraySearch(const QString& typed) : typed_(typed), said_(readSaid(typed.toStdString())) {
        for (const std::string& word : said_.words) words_ << typedWords(qs(word));
    }

    TrayFound run() {
        if (words_.isEmpty() && said_.quantities.empty()) return {};
        for (const SaidQuantity& quantity : said_.quantities) {
            if (quantity.ambiguous) return {{}, twoReadings(quantity)};
        }
        for (const SearchEntry& entry : allEntries()) consider(entry);
        if (!said_.quantities.empty()) askKinds();
        std::ranges::stable_sort(found_, std::ranges::greater(), &Scored::worth);
        TrayFound result;
        for (Scored& each : found_) {
            const PartKind* kind = each.item.part ? each.item.part->kind : nullptr;
            result.items.push_back(std::move(each.item));
            if (besides_.empty() || !besides_.front().part || besides_.front().part->kind != kind) continue;
            result.items.insert(result.items.end(), besides_.begin(), besides_.end());
            besides_.clear();
        }
        result.items.insert(result.items.end(), besides_.begin(), besides_.end());
        result.words = result.items.empty() && remark_.isEmpty() ? nothing() : remark_;
        return result;
    }

private:
    struct Scored {
        int worth;
        TrayItem item;
    };

    /// The sum over all words; nothing if one is found nowhere.
    std::optional<int> wordsWorth(const SearchEntry& entry) const {
        int sum = 0;
        for (const QString& word : words_) {
            const int here = worthOfWord(entry, word);
            if (here == kNowhere) return std::nullopt;
            sum += here;
        }
        return sum;
    }

    void consider(const SearchEntry& entry) {
        const auto words = wordsWorth(entry);
        if (!words) return;
        if (entry.item.part) meant_.push_back(entry.item.part->kind);
        int worth = *words;
        for (const SaidQuantity& quantity : said_.quantities) {
            const int here = worthOfQuantity(entry, quantity);
            if (here == kNowhere) return;
            worth += here;
        }
        found_.push_back({worth, entry.item});
    }

    /// Each kind that the words mean is asked for a part made to order.
    void askKinds() {
        std::vector<Wish> refusals;
        for (const PartKind& kind : catalogue()) {
            if (std::ranges::find(meant_, &kind) == meant_.end()) continue;
            Wish wish = wishFor(kind, said_.quantities);
            if (wish.answer == Wish::Answer::Made || wish.answer == Wish::Answer::BetweenTwo)
                add(std::move(wish));
            else
                refusals.push_back(std::move(wish));
        }
        if (!found_.empty()) return;
        std::ranges::stable_sort(refusals, {}, &Wish::answer);  // what comes nearest to what was asked for
        if (refusals.empty() || refusals.front().answer == Wish::Answer::NoSuchValue) return tellNoSuchValue();
        besides_ = refusals.front().items;
        remark_ = refusals.front().words;
    }

    void add(Wish wish) {
        const TrayItem made = std::move(wish.items.front());
        const bool known = std::ranges::any_of(found_, [&](const Scored& each) {
            return each.item.part && each.item.part->kind == made.part->kind && sameValues(*each.item.part, *made.part);
        });
        if (known) return;
        const int words = wordsWorth(entryOf({qs(made.part->kind->family), {}}, made)).value_or(0);
        found_.push_back({words + kExactName * static_cast<int>(said_.quantities.size()), made});
        if (wish.answer != Wish::Answer::BetweenTwo || !remark_.isEmpty()) return;
        remark_ = wish.words;
        besides_.assign(wish.items.begin() + 1, wish.items.end());
    }

    void tellNoSuchValue() {
        if (meant_.empty() || words_.isEmpty()) return;
        QStringList asked;
        for (const SaidQuantity& quantity : said_.quantities) asked << plainText(quantity.text);
        remark_ = QStringLiteral("\u201c%1\u201d isn't a value of the part %2.")
                      .arg(asked.join(QStringLiteral(", ")), qs(meant_.front()->label));
    }

    QString nothing() const {
        return QStringLiteral("Nothing in the tray suits \u201c%1\u201d.").arg(plainText(typed_.trimmed()));
    }

    static QString twoReadings(const SaidQuantity& quantity) {
        return QStringLiteral(
                   "\u201c%1\u201d can be read in two ways: write thousands without a comma, or a point in its place.")
            .arg(plainText(quantity.text));
    }

    QString typed_;
    SaidWords said_;
    QStringList words_;
    std::vector<const PartKind*> meant_;  ///< kinds of which something suits the words
    std::vector<Scored> found_;
    std::vector<TrayItem> besides_;  ///< offered behind what suits of their kind, else of any
    QString remark_;
};

}  // namespace

TrayFound findInTray(const QString& typed) { return TraySearch(typed).run(); }

}  // namespace tiepoint::ui
