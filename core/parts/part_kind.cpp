// The catalogue: every embedded part kind, read once.

#include "core/parts/part_kind.h"

#include "core/base/embedded.h"
#include "core/parts/kind_file.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cassert>
#include <cstdio>
#include <cstdlib>

namespace tiepoint {
namespace {

constexpr std::array<JumperColour, 8> kJumperColours = {
    {{"red"}, {"black"}, {"blue"}, {"yellow"}, {"green"}, {"violet"}, {"orange"}, {"white"}}};

template <class Item>
int indexByName(const std::vector<Item>& items, std::string_view name) {
    const auto found = std::find_if(items.begin(), items.end(), [&](const Item& item) { return item.name == name; });
    return found == items.end() ? -1 : static_cast<int>(found - items.begin());
}

std::size_t familyRank(const PartKind& kind) {
    const auto families = trayFamilies();
    return static_cast<std::size_t>(std::find(families.begin(), families.end(), kind.family) - families.begin());
}

bool earlierInTray(const PartKind& a, const PartKind& b) {
    return std::tuple(familyRank(a), a.order, std::string_view(a.name)) <
           std::tuple(familyRank(b), b.order, std::string_view(b.name));
}

const PartKind& firstInTray(bool (*suits)(const PartKind&)) {
    const auto found = std::ranges::find_if(catalogue(), suits);
    assert(found != catalogue().end());
    return *found;
}

std::vector<PartKind> readCatalogue() {
    std::vector<PartKind> kinds;
    for (const EmbeddedFile& file : embeddedFiles()) {
        if (!file.name.starts_with("parts/")) continue;
        Result<PartKind> kind = readPartKind(file.name, file.text);
        if (!kind) {
            // The files are part of the program: it can't mean anything without them.
            fmt::print(stderr, "{}\n", kind.error().oneLine());
            std::abort();
        }
        kinds.push_back(std::move(kind).value());
    }
    std::sort(kinds.begin(), kinds.end(), earlierInTray);
    return kinds;
}

}  // namespace

int PartKind::leadIndex(std::string_view leadName) const { return indexByName(leads, leadName); }
int PartKind::valueIndex(std::string_view valueName) const { return indexByName(values, valueName); }
int PartKind::stateIndex(std::string_view stateName) const { return indexByName(state, stateName); }

bool PartKind::hasControl() const {
    return std::ranges::any_of(state, [](const ValueSpec& spec) { return !spec.remembered; });
}

const std::vector<PartKind>& catalogue() {
    static const std::vector<PartKind> kinds = readCatalogue();
    return kinds;
}

const PartKind* findKind(std::string_view name) {
    const int index = indexByName(catalogue(), name);
    return index < 0 ? nullptr : &catalogue()[index];
}

int resistanceValue(const PartKind& kind) {
    if (kind.model.size() != 1 || kind.model.front().element != "resistance") return -1;
    for (const auto& [name, parameter] : kind.model.front().parameters) {
        const auto* value = std::get_if<std::string>(&parameter.source);
        if (name == "resistance" && value) return kind.valueIndex(*value);
    }
    return -1;
}

int valueBesideId(const PartKind& kind) {
    for (const std::string_view name : {"resistance", "capacitance", "inductance"}) {
        if (const int index = kind.valueIndex(name); index >= 0) return index;
    }
    return -1;
}

const PartKind& usualSupply() {
    static const PartKind& kind = firstInTray([](const PartKind& each) { return each.isSupply; });
    return kind;
}

const PartKind& usualResistor() {
    static const PartKind& kind = firstInTray([](const PartKind& each) { return resistanceValue(each) >= 0; });
    return kind;
}

const PartKind& usualLight() {
    static const PartKind& kind = firstInTray([](const PartKind& each) { return each.needsResistor; });
    return kind;
}

std::span<const JumperColour> jumperColours() { return kJumperColours; }

int findJumperColour(std::string_view name) {
    const auto found = std::find_if(kJumperColours.begin(), kJumperColours.end(),
                                    [&](const JumperColour& colour) { return colour.name == name; });
    return found == kJumperColours.end() ? -1 : static_cast<int>(found - kJumperColours.begin());
}

}  // namespace tiepoint
