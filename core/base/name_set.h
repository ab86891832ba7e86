#pragma once
// Names that must not stand twice.

#include <algorithm>
#include <cstddef>
#include <string>
#include <unordered_set>
#include <vector>

namespace tiepoint {

/// The names used in one object. Nearly all objects have few, for which looking through them is fastest.
class NameSet {
public:
    /// Whether the name is new.
    bool insert(const std::string& name) {
        if (few_.size() < kFew) {
            if (std::find(few_.begin(), few_.end(), name) != few_.end()) return false;
            few_.push_back(name);
            return true;
        }
        if (many_.empty()) many_.insert(few_.begin(), few_.end());
        return many_.insert(name).second;
    }

private:
    static constexpr std::size_t kFew = 16;
    std::vector<std::string> few_;
    std::unordered_set<std::string> many_;
};

}  // namespace tiepoint
