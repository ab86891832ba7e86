#pragma once
// Members of a file that this version doesn't know: kept as they are, each with a warning up to a number that can be read.
// Internal to reading; borrows the text.

#include "core/base/json_scan.h"
#include "core/base/line_counter.h"
#include "core/bench/extras.h"

#include <string>
#include <string_view>
#include <vector>

namespace tiepoint {

class KeptMembers {
public:
    explicit KeptMembers(std::string_view text) : text_(text), lines_(text) {}

    /// Keeps a member of the object that `pointer` names. Its offsets count from `base` in the text.
    void keep(const JsonValue& member, const std::string& pointer, Extras& extras, std::size_t base = 0);
    /// The warnings; the last one counts those that were too many.
    std::vector<Error> takeWarnings();

private:
    std::string_view text_;
    LineCounter lines_;  ///< cheap, since members come in the order of the file
    std::vector<Error> warnings_;
    std::size_t count_ = 0;
};

}  // namespace tiepoint
