#pragma once
// What of a bench can be measured.

#include "core/bench/bench.h"

#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <unordered_set>

namespace tiepoint {

/// Looks each thing up in constant time. Points into the bench, which must neither go nor change meanwhile. Not thread-safe.
class Measurable {
public:
    explicit Measurable(const Bench& bench);

    /// Why there is nothing to measure there, in plain words; nothing if there is.
    std::optional<std::string> refusal(const Measurand& measurand) const;

private:
    std::optional<std::string> refusalOf(const Hole& hole) const;

    std::unordered_map<std::string_view, const Board*> boards_;
    std::unordered_map<std::string_view, const Part*> parts_;
    std::unordered_set<std::string_view> jumpers_;
};

}  // namespace tiepoint
