// The electrical model in a part kind's file: elements between nodes, their parameters and when they are there.
#pragma once

#include "core/parts/part_kind.h"
#include "core/parts/strict_json.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <utility>

namespace tiepoint {

template <std::size_t Size>
bool isOneOf(const std::array<std::string_view, Size>& known, std::string_view name) {
    return std::find(known.begin(), known.end(), name) != known.end();
}

/// Reads each object of a list with `read`.
template <class Read>
auto readList(StrictObject& parent, std::string_view name, Read read) {
    std::vector<decltype(read(std::declval<StrictObject&>()))> items;
    for (const nlohmann::json& entry : parent.list(name)) {
        StrictObject object(entry, fmt::format("{}/{}", parent.pointerTo(name), items.size()));
        items.push_back(read(object));
        object.done();
    }
    return items;
}

/// A number, the name of a figure of the kind, or a derivation; the names are not looked up.
Parameter readParameter(const nlohmann::json& source, const std::string& pointer);
/// The same of a member, which fails where the kind has no such figure.
Parameter readCheckedParameter(StrictObject& object, std::string_view name, const PartKind& kind);

/// The kind's `model`; `kind` has its leads, values and states already. Fails at the place that is wrong.
std::vector<ElementSpec> readModel(StrictObject& root, const PartKind& kind);

}  // namespace tiepoint
