#include "core/parts/strict_json.h"

#include <fmt/format.h>

namespace tiepoint {

StrictObject::StrictObject(const nlohmann::json& json, std::string pointer)
    : json_(json),
      pointer_(std::move(pointer)) {
    if (!json_.is_object()) throw StrictJsonError(pointer_, "this isn't an object");
}

bool StrictObject::has(std::string_view name) const { return json_.contains(name); }

const nlohmann::json& StrictObject::at(std::string_view name) {
    const auto found = json_.find(name);
    if (found == json_.end()) fail(name, "this member is missing");
    asked_.emplace(name);
    return *found;
}

std::string StrictObject::text(std::string_view name) {
    const nlohmann::json& member = at(name);
    if (!member.is_string() || member.get_ref<const std::string&>().empty()) fail(name, "this isn't a text");
    return member.get<std::string>();
}

double StrictObject::number(std::string_view name) {
    const nlohmann::json& member = at(name);
    if (!member.is_number()) fail(name, "this isn't a number");
    return member.get<double>();
}

bool StrictObject::flag(std::string_view name) {
    if (!has(name)) return false;
    const nlohmann::json& member = at(name);
    if (!member.is_boolean()) fail(name, "this is neither true nor false");
    return member.get<bool>();
}

const nlohmann::json& StrictObject::list(std::string_view name) {
    const nlohmann::json& member = at(name);
    if (!member.is_array()) fail(name, "this isn't a list");
    return member;
}

StrictObject StrictObject::object(std::string_view name) { return {at(name), pointerTo(name)}; }

std::string StrictObject::pointerTo(std::string_view name) const { return fmt::format("{}/{}", pointer_, name); }

std::vector<std::string> StrictObject::unasked() const {
    std::vector<std::string> names;
    for (const auto& item : json_.items()) {
        if (!asked_.contains(item.key())) names.push_back(item.key());
    }
    return names;
}

void StrictObject::done() const {
    for (const std::string& name : unasked()) fail(name, "no such member is known");
}

void StrictObject::fail(std::string_view name, const std::string& message) const {
    throw StrictJsonError(pointerTo(name), message);
}

}  // namespace tiepoint
