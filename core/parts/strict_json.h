#pragma once
// Reading JSON strictly: every member is asked for by name and type, and done() refuses what nobody asked
// for. Errors are thrown inside the loader and caught at its door; nothing else in the core throws.

#include <nlohmann/json.hpp>

#include <set>
#include <stdexcept>
#include <string>
#include <string_view>

namespace tiepoint {

/// Thrown with the JSON pointer of the offender.
class StrictJsonError : public std::runtime_error {
public:
    StrictJsonError(std::string pointer, const std::string& message)
        : std::runtime_error(message),
          pointer_(std::move(pointer)) {}
    const std::string& pointer() const { return pointer_; }

private:
    std::string pointer_;
};

/// One object of the file, with its place. Borrows the JSON.
class StrictObject {
public:
    StrictObject(const nlohmann::json& json, std::string pointer);

    bool has(std::string_view name) const;
    const nlohmann::json& at(std::string_view name);  ///< marks the member as known
    std::string text(std::string_view name);          ///< not empty
    double number(std::string_view name);
    bool flag(std::string_view name);  ///< false where the member is missing
    const nlohmann::json& list(std::string_view name);
    StrictObject object(std::string_view name);
    std::string pointerTo(std::string_view name) const;
    const std::string& pointer() const { return pointer_; }
    const nlohmann::json& json() const { return json_; }

    /// Names that nobody asked for yet.
    std::vector<std::string> unasked() const;
    /// Refuses members that nobody asked for.
    void done() const;
    [[noreturn]] void fail(std::string_view name, const std::string& message) const;

private:
    const nlohmann::json& json_;
    std::string pointer_;
    std::set<std::string, std::less<>> asked_;
};

}  // namespace tiepoint
