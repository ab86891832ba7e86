#include "ui/tray/tray_items.h"

#include "core/bench/describe.h"
#include "ui/theme/qs.h"

#include <QStringList>

#include <algorithm>
#include <array>
#include <cmath>

namespace tiepoint::ui {
namespace {

// Common practice for lessons with 3 V to 9 V and indicator lights, all of the E12 series.
constexpr std::array kUsualResistances{100.0, 150.0, 220.0, 330.0, 470.0, 680.0, 1e3, 2.2e3, 4.7e3, 10e3, 47e3, 100e3};

QString presetOf(const ValueSpec& spec, double value) {
    const bool choice = spec.type == ValueType::Choice;
    const QString figure =
        choice ? qs(spec.choices.at(static_cast<std::size_t>(value)).name) : QString::number(value, 'g', 12);
    return qs(spec.name) + QStringLiteral("=") + figure;
}

TrayItem itemWith(const PartKind& kind, int valueIndex, double value) {
    Part part = makePart(kind, kind.prefix + "1");
    part.values[valueIndex] = value;
    const ValueSpec& spec = kind.values[valueIndex];
    return {qs(kind.name), presetOf(spec, value), qs(describeSetting(spec, value)), part, 0};
}

/// The numbers worth offering for a value: what the kind allows, or the usual ones of a preferred series.
std::vector<double> usualNumbers(const ValueSpec& spec) {
    if (!spec.allowed.empty()) return spec.allowed;
    std::vector<double> usual;
    if (spec.series.empty()) return usual;
    for (const double number : kUsualResistances)
        if (number >= spec.minimum && number <= spec.maximum) usual.push_back(number);
    return usual;
}

void putFallbackFirst(std::vector<TrayItem>& items, const QString& fallback) {
    const auto found = std::ranges::find(items, fallback, &TrayItem::preset);
    if (found != items.end()) std::rotate(items.begin(), found, found + 1);
}

/// The variants of a kind along its first choice, or else along its first value with usual numbers.
std::vector<TrayItem> itemsOf(const PartKind& kind) {
    std::vector<TrayItem> items;
    for (std::size_t i = 0; i < kind.values.size() && items.empty(); ++i) {
        const ValueSpec& spec = kind.values[i];
        for (std::size_t c = 0; c < spec.choices.size(); ++c)
            items.push_back(itemWith(kind, static_cast<int>(i), static_cast<double>(c)));
    }
    for (std::size_t i = 0; i < kind.values.size() && items.empty(); ++i)
        for (const double number : usualNumbers(kind.values[i]))
            items.push_back(itemWith(kind, static_cast<int>(i), number));
    if (items.empty()) items.push_back({qs(kind.name), {}, qs(kind.label), makePart(kind, kind.prefix + "1"), 0});
    return items;
}

TrayFamily jumpers() {
    TrayFamily family{QStringLiteral("Jumper"), {}};
    for (std::size_t i = 0; i < jumperColours().size(); ++i) {
        const QString name = qs(jumperColours()[i].name);
        family.items.push_back({QString::fromLatin1(kJumperKind), name, name, std::nullopt, static_cast<int>(i)});
    }
    return family;
}

TrayFamily& familyOf(std::vector<TrayFamily>& families, const QString& name) {
    const auto found = std::ranges::find(families, name, &TrayFamily::name);
    if (found != families.end()) return *found;
    return families.emplace_back(TrayFamily{name, {}});
}

/// A kind that shares its compartment lies there once, unless it comes in a series of values, or is the usual one there and a choice is the first
/// thing that is asked of it: a colour.
bool comesInVariants(const PartKind& kind) {
    const auto inSeries = [](const ValueSpec& spec) { return !spec.series.empty(); };
    const auto usual = std::ranges::find(catalogue(), kind.family, &PartKind::family);
    const bool isChosen = !kind.values.empty() && kind.values.front().type == ValueType::Choice;
    return std::ranges::count(catalogue(), kind.family, &PartKind::family) == 1 ||
           (usual->name == kind.name && isChosen) || std::ranges::any_of(kind.values, inSeries);
}

std::vector<TrayItem> offered(const PartKind& kind) {
    if (!comesInVariants(kind)) return {{qs(kind.name), {}, qs(kind.label), makePart(kind, kind.prefix + "1"), 0}};
    std::vector<TrayItem> items = itemsOf(kind);
    if (!kind.values.empty()) putFallbackFirst(items, presetOf(kind.values[0], kind.values[0].fallback));
    return items;
}

/// Which value of an item is a resistance that comes in a series; -1: none.
int resistanceOf(const TrayItem& item) { return item.part ? resistanceValue(*item.part->kind) : -1; }

}  // namespace

bool isResistor(const TrayItem& item) { return resistanceOf(item) >= 0; }

bool isHeld(const TrayItem& item, const ResistorDrawer& drawer) {
    const int value = resistanceOf(item);
    return drawer.isEverything() || value < 0 || drawer.holds(item.part->value(value));
}

TrayFamily withDrawer(const TrayFamily& family, const ResistorDrawer& drawer) {
    const int value = resistanceOf(family.items.front());
    if (drawer.isEverything() || value < 0) return family;
    const TrayItem& usual = family.items.front();
    TrayFamily held{family.name, {}};
    for (const double ohm : drawer.ohms()) held.items.push_back(itemWith(*usual.part->kind, value, ohm));
    const auto farness = [&](const TrayItem& item) {
        return std::abs(std::log(item.part->value(value) / usual.part->value(value)));
    };
    const auto nearest = std::ranges::min_element(held.items, {}, farness);
    std::rotate(held.items.begin(), nearest, nearest + 1);
    return held;
}

namespace {

/// A kit's part as it is taken out: everything in which it is otherwise than usual is its preset.
TrayItem kitItemOf(const Part& kitPart, const TrayFamily& family) {
    const PartKind& kind = *kitPart.kind;
    const auto same = std::ranges::find_if(family.items, [&](const TrayItem& item) {
        return item.part && item.part->kind == kitPart.kind && item.part->values == kitPart.values;
    });
    if (same != family.items.end()) return *same;
    TrayItem item{qs(kind.name), {}, qs(kind.label), kitPart, 0};
    item.part->id = kind.prefix + "1";
    item.part->leads.assign(kind.leads.size(), std::nullopt);
    QStringList settings;
    for (std::size_t i = 0; i < kind.values.size(); ++i) {
        const double value = kitPart.value(static_cast<int>(i));
        if (value == kind.values[i].fallback) continue;
        settings << presetOf(kind.values[i], value);
        if (settings.size() == 1) item.label = qs(describeSetting(kind.values[i], value));
    }
    item.preset = settings.join(QLatin1Char(';'));
    return item;
}

}  // namespace

TrayFamily withKit(const TrayFamily& family, const Kit& kit) {
    TrayFamily held{family.name, {}};
    for (const TrayItem& item : family.items)
        if (!item.part) held.items.push_back(item);
    const auto take = [&](const Part& part) {
        if (qs(part.kind->family) == family.name) held.items.push_back(kitItemOf(part, family));
    };
    if (kit.supply) take(*kit.supply);
    for (const KitPart& each : kit.parts)
        if (each.count > 0) take(each.part);
    if (!kit.supply) {
        for (const TrayItem& item : family.items)
            if (item.part && item.part->kind->isSupply) held.items.push_back(item);
    }
    for (const TrayItem& item : family.items) {  // meters have no values, only a count
        const bool isMeter = item.part && standsOnTable(*item.part) && !item.part->kind->isSupply;
        if (isMeter && kit.meters > 0) held.items.push_back(item);
    }
    // What is usual comes first, if the kit has it.
    const auto usual = std::ranges::find(held.items, family.items.front().preset, &TrayItem::preset);
    if (usual != held.items.end()) std::rotate(held.items.begin(), usual, usual + 1);
    return held;
}

bool isInKit(const TrayItem& item, const Kit& kit) {
    if (!item.part) return true;
    if (standsOnTable(*item.part) && !item.part->kind->isSupply) return kit.meters > 0;
    return hasPart(kit, *item.part);
}

std::vector<TrayFamily> trayFamilies() {
    std::vector<TrayFamily> families;
    for (const PartKind& kind : catalogue()) {
        TrayFamily& family = familyOf(families, qs(kind.family));
        for (TrayItem& item : offered(kind)) family.items.push_back(std::move(item));
    }
    families.insert(families.begin() + std::min<std::ptrdiff_t>(1, std::ssize(families)), jumpers());
    return families;
}

}  // namespace tiepoint::ui
