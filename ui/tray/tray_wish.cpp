#include "ui/tray/tray_wish.h"

#include "core/bench/describe.h"
#include "core/parts/ladder.h"
#include "core/parts/preferred.h"
#include "ui/theme/qs.h"

#include <QStringList>

#include <algorithm>
#include <cmath>

namespace tiepoint::ui {
namespace {

/// Whether a quantity may mean a value. A bare number means ohms, or a count.
bool means(const SaidQuantity& quantity, const ValueSpec& spec) {
    if (!spec.sought || spec.type != ValueType::Number) return false;
    if (quantity.unit.empty()) return spec.unit == "ohm" || spec.integer;
    return quantity.unit == "%" ? spec.unit.empty() && !spec.integer : quantity.unit == spec.unit;
}

bool isInRange(const ValueSpec& spec, double value) { return value >= spec.minimum && value <= spec.maximum; }

bool isAllowed(const ValueSpec& spec, double value) {
    return spec.allowed.empty() || std::ranges::find(spec.allowed, value) != spec.allowed.end();
}

QString settingWords(const ValueSpec& spec, double value) { return qs(describeSetting(spec, value)); }

/// The numbers on both sides of one that isn't made or preferred; those that exist.
std::vector<double> nextTo(const ValueSpec& spec, double value) {
    std::vector<double> numbers{ladderStep(spec, value, -1), ladderStep(spec, value, 1)};
    std::erase(numbers, value);
    std::ranges::sort(numbers);
    numbers.erase(std::unique(numbers.begin(), numbers.end()), numbers.end());
    return numbers;
}

/// Of the series that the kind comes in, or of the fine one that is sold too.
bool isPreferred(const ValueSpec& spec, double value) {
    constexpr double kRounding = 1e-9;
    const auto isIn = [&](std::string_view series) {
        return std::abs(nearestPreferred(series, value) / value - 1) < kRounding;
    };
    return spec.series.empty() || isIn(spec.series) || isIn("E96");
}

/// A part of a kind in the making: which values have been set.
class Order {
public:
    explicit Order(const PartKind& kind) : part_(makePart(kind, kind.prefix + "1")) {}

    const Part& part() const { return part_; }
    bool hasSet() const { return !set_.empty(); }

    /// The value that a quantity means and that nothing has set yet; -1: none.
    int valueFor(const SaidQuantity& quantity) const {
        const auto& specs = part_.kind->values;
        for (int i = 0; i < static_cast<int>(specs.size()); ++i) {
            if (means(quantity, specs[i]) && std::ranges::find(set_, i) == set_.end()) return i;
        }
        return -1;
    }
    void set(int index, double value) {
        part_.values[index] = value;
        set_.push_back(index);
    }

    TrayItem item() const {
        QStringList presets, words;
        bool named = false;  // a preferred value names the part by itself
        for (const int index : set_) {
            const ValueSpec& spec = part_.kind->values[index];
            presets << QStringLiteral("%1=%2").arg(qs(spec.name), QString::number(part_.value(index), 'g', 15));
            words << settingWords(spec, part_.value(index));
            named = named || !spec.series.empty();
        }
        if (!named) words.prepend(qs(part_.kind->label));
        return {qs(part_.kind->name), presets.join(QLatin1Char(';')), words.join(QStringLiteral(", ")), part_, 0};
    }
    /// The same with another value.
    TrayItem itemWith(int index, double value) const {
        Order other = *this;
        other.part_.values[index] = value;
        if (std::ranges::find(set_, index) == set_.end()) other.set_.push_back(index);
        return other.item();
    }

private:
    Part part_;
    std::vector<int> set_;
};

QString numbersInWords(const ValueSpec& spec, const std::vector<double>& numbers) {
    QStringList words;
    for (const double number : numbers) words << settingWords(spec, number);
    return words.join(QStringLiteral(" and "));
}

Wish notMade(const Order& order, int index, double value) {
    const ValueSpec& spec = order.part().kind->values[index];
    Wish wish{Wish::Answer::NotMade, {}, {}};
    const std::vector<double> next = nextTo(spec, value);
    for (const double number : next) wish.items.push_back(order.itemWith(index, number));
    QString label = qs(order.part().kind->label);
    label.front() = label.front().toUpper();
    wish.words = QStringLiteral("%1: there is none with %2; next to it there are %3.")
                     .arg(label, settingWords(spec, value), numbersInWords(spec, next));
    return wish;
}

Wish outOfRange(const Order& order, int index, double value) {
    const ValueSpec& spec = order.part().kind->values[index];
    const QString range =
        QStringLiteral("from %1 to %2").arg(settingWords(spec, spec.minimum), settingWords(spec, spec.maximum));
    return {Wish::Answer::OutOfRange,
            {},
            QStringLiteral("Not %1: the %2 of a %3 goes %4.")
                .arg(settingWords(spec, value), qs(spec.label).toLower(), qs(order.part().kind->label), range)};
}

Wish betweenTwo(const Order& order, int index) {
    const ValueSpec& spec = order.part().kind->values[index];
    const double value = order.part().value(index);
    Wish wish{Wish::Answer::BetweenTwo, {order.item()}, {}};
    const std::vector<double> next = nextTo(spec, value);
    for (const double number : next) wish.items.push_back(order.itemWith(index, number));
    wish.words = QStringLiteral("%1 is no preferred value; next to it in %2 there are %3.")
                     .arg(settingWords(spec, value), qs(spec.series), numbersInWords(spec, next));
    return wish;
}

}  // namespace

bool hasQuantity(const Part& part, const SaidQuantity& quantity) {
    for (std::size_t i = 0; i < part.kind->values.size(); ++i) {
        if (means(quantity, part.kind->values[i]) && part.value(static_cast<int>(i)) == quantity.value) return true;
    }
    const auto inWords = [&](const std::string& words) {
        const auto said = readSaid(words).quantities;
        return std::ranges::any_of(
            said, [&](const SaidQuantity& own) { return own.unit == quantity.unit && own.value == quantity.value; });
    };
    return inWords(part.kind->label) || std::ranges::any_of(part.kind->searchWords, inWords);
}

Wish wishFor(const PartKind& kind, std::span<const SaidQuantity> quantities) {
    Order order(kind);
    int between = -1;
    for (const SaidQuantity& quantity : quantities) {
        const int index = order.valueFor(quantity);
        if (index < 0) {
            if (hasQuantity(order.part(), quantity)) continue;
            return {};
        }
        const ValueSpec& spec = kind.values[index];
        const bool whole = !spec.integer || quantity.value == std::floor(quantity.value);
        if (!isInRange(spec, quantity.value) || !whole) return outOfRange(order, index, quantity.value);
        if (!isAllowed(spec, quantity.value)) return notMade(order, index, quantity.value);
        order.set(index, quantity.value);
        if (!isPreferred(spec, quantity.value)) between = index;
    }
    if (!order.hasSet()) return {};
    if (between >= 0) return betweenTwo(order, between);
    return {Wish::Answer::Made, {order.item()}, {}};
}

}  // namespace tiepoint::ui
