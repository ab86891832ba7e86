#include "core/instant/state.h"

namespace tiepoint {

double State::of(std::string_view part, Memory what, int place, double otherwise) const {
    const auto found = values.find({std::string(part), what, place});
    return found == values.end() ? otherwise : found->second;
}

}  // namespace tiepoint
