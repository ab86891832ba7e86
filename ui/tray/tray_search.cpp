// Each typed word must be found somewhere: the beginning of a word of the name counts more than of the family or the search words, and
// these more than anything in the help. A word that is a resistance counts as a resistor of it.

#include "ui/tray/tray_search.h"

#include "core/base/quantity.h"
#include "core/bench/describe.h"
#include "ui/theme/qs.h"

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

/// The resistance that a word says, if it says one.
std::optional<double> resistanceIn(const QString& word) {
    if (!word.front().isDigit() && word.front() != QLatin1Char('.')) return std::nullopt;
    const auto ohm = parseQuantity(word.toStdString(), "ohm");
    const PartKind& kind = usualResistor();
    const ValueSpec& spec = kind.values[static_cast<std::size_t>(resistanceValue(kind))];
    return ohm && *ohm >= spec.minimum && *ohm <= spec.maximum ? ohm : std::nullopt;
}

/// The resistance of an item that is a resistor.
std::optional<double> resistanceOf(const TrayItem& item) {
    const int value = item.part ? resistanceValue(*item.part->kind) : -1;
    return value < 0 ? std::nullopt : std::optional(item.part->value(value));
}

int worthOf(const SearchEntry& entry, const QString& word) {
    if (const auto own = resistanceOf(entry.item); own && own == resistanceIn(word)) return kExactName;
    if (entry.item.part && entry.name.contains(word))
        return kExactName;  // a colour alone means a light before a jumper
    if (beginsAny(entry.name, word)) return kInName;
    if (beginsAny(entry.kind, word)) return kInKind;
    return beginsAny(entry.help, word) ? kInHelp : kNowhere;
}

TrayItem resistorOf(double ohm) {
    const PartKind& kind = usualResistor();
    const auto value = static_cast<std::size_t>(resistanceValue(kind));
    const ValueSpec& spec = kind.values[value];
    Part part = makePart(kind, kind.prefix + "1");
    part.values[value] = ohm;
    return {qs(kind.name), QStringLiteral("%1=%2").arg(qs(spec.name)).arg(ohm, 0, 'g', 12),
            qs(describeSetting(spec, ohm)), part, 0};
}

}  // namespace

std::vector<TrayItem> findItems(const QString& typed) {
    const QStringList words = typedWords(typed);
    if (words.isEmpty()) return {};
    std::vector<SearchEntry> entries = allEntries();
    for (const QString& word : words) {
        const auto ohm = resistanceIn(word);
        const auto has = [&](const SearchEntry& entry) { return resistanceOf(entry.item) == ohm; };
        if (ohm && std::none_of(entries.begin(), entries.end(), has)) {
            entries.push_back(entryOf({QStringLiteral("Resistor"), {}}, resistorOf(*ohm)));
        }
    }
    std::vector<std::pair<int, TrayItem>> found;
    for (const SearchEntry& entry : entries) {
        int worth = 0;
        const bool all = std::all_of(words.begin(), words.end(), [&](const QString& word) {
            const int here = worthOf(entry, word);
            worth += here;
            return here > kNowhere;
        });
        if (all) found.emplace_back(worth, entry.item);
    }
    std::stable_sort(found.begin(), found.end(), [](const auto& a, const auto& b) { return a.first > b.first; });
    std::vector<TrayItem> items;
    items.reserve(found.size());
    for (auto& [worth, item] : found) items.push_back(std::move(item));
    return items;
}

}  // namespace tiepoint::ui
