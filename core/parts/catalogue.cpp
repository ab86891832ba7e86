#include "core/parts/catalogue.h"

#include <algorithm>

namespace tiepoint {

const Catalogue& Catalogue::shipped() {
    static const Catalogue kShipped({});
    return kShipped;
}

const PartKind* Catalogue::find(std::string_view name) const {
    if (const PartKind* kind = findKind(name)) return kind;
    const auto found = std::ranges::find(more_, name, &PartKind::name);
    return found == more_.end() ? nullptr : &*found;
}

}  // namespace tiepoint
