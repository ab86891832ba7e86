#pragma once
// The quantities that a rating can limit: names in the kind files, units, and which leads a rating may name. What each measures on a
// snapshot stands in core/snapshot/readings.cpp, which findings judge it in rules.h. Constant data.

#include <span>
#include <string_view>

namespace tiepoint {

struct RatedQuantity {
    std::string_view name;
    std::string_view unit;
    int leads = 0;          ///< how many a rating may name; none names none: the whole part
    bool needsTwo = false;  ///< without names it is between the part's first two leads
};

std::span<const RatedQuantity> ratedQuantities();
/// The quantity of that name, or null.
const RatedQuantity* findRatedQuantity(std::string_view name);

}  // namespace tiepoint
