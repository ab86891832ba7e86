#include "core/parts/rated_quantity.h"

#include <algorithm>
#include <array>

namespace tiepoint {
namespace {

constexpr bool kNeedsTwo = true;
constexpr std::array kRatedQuantities = {
    RatedQuantity{"current", "A", 1, !kNeedsTwo},  // of an element of the part, or of a lead
    RatedQuantity{"power", "W", 0, !kNeedsTwo},    // what the part turns into heat
    RatedQuantity{"voltage", "V", 2, !kNeedsTwo},  // the widest between any leads, or between two, whichever is higher
    RatedQuantity{"reverseVoltage", "V", 2, kNeedsTwo},  // how far the second lies above the first
};

}  // namespace

std::span<const RatedQuantity> ratedQuantities() { return kRatedQuantities; }

const RatedQuantity* findRatedQuantity(std::string_view name) {
    const auto found = std::ranges::find(kRatedQuantities, name, &RatedQuantity::name);
    return found == kRatedQuantities.end() ? nullptr : &*found;
}

}  // namespace tiepoint
