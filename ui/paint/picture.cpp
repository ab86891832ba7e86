#include "ui/paint/picture.h"

#include "core/snapshot/readings.h"
#include "ui/paint/tag_keeper.h"

#include <algorithm>
#include <cmath>

namespace tiepoint::ui {

void Picture::arrangeTable() {
    Table upright = arrange(bench());
    table = std::make_shared<const Table>(views.turned ? turnedOver(bench(), std::move(upright)) : std::move(upright));
}

void Picture::arrangeTags() { TagKeeper().arrange(*this); }

const PinnedTag* Picture::pinnedTag(const std::string& id) const {
    if (!pinned) return nullptr;
    const auto found = std::find_if(pinned->begin(), pinned->end(), [&](const PinnedTag& tag) { return tag.id == id; });
    return found == pinned->end() ? nullptr : &*found;
}

double fullScaleAmpere(const Picture& picture) {
    if (picture.views.lockedFullScaleAmpere) return *picture.views.lockedFullScaleAmpere;
    constexpr double kAtRest = 1e-3;
    const Snapshot* live = picture.live();
    const double largest = live ? live->largestFlow() : 0;
    if (!(largest >= kNoCurrentAmpere)) return kAtRest;
    // Rounding in the solve mustn't lift a full 10 mA to the next step.
    constexpr double kSlack = 1 + 1e-9;
    const double decade = std::pow(10, std::floor(std::log10(largest)));
    for (const double step : {1.0, 2.0, 5.0}) {
        if (largest <= step * decade * kSlack) return step * decade;
    }
    return 10 * decade;
}

}  // namespace tiepoint::ui
