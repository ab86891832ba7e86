// A supply whose current limit is set too small, so that its voltage falls as soon as something is connected.

#include "core/slips/figures.h"
#include "core/slips/kinds/kinds.h"

#include <array>

namespace tiepoint {
namespace {

constexpr std::array kSmallLimits = {0.001, 0.005, 0.01};  // A; a knob left near its stop
constexpr std::array kUsualLimits = {0.5, 0.1, 0.2, 0.05, 0.02, 0.01, 0.3, 1.0};

void searchSmallLimit(SlipSearch& search) {
    search.eachPart([&](int index, int away) {
        const Part& part = search.ground().part(index);
        const int limit = part.kind->valueIndex("currentLimit");
        if (!part.kind->isSupply || limit < 0) return;
        const double now = part.value(limit);
        if (search.backwards()) {
            for (const double to : kUsualLimits) {
                if (to > now) offerFigure(search, index, false, limit, to, away);
            }
            return;
        }
        for (const double to : kSmallLimits) {
            if (to < now) offerFigure(search, index, false, limit, to, away);
        }
    });
}

}  // namespace

const SlipKind kSmallLimit{"small-limit", 2, "slip.small-limit.seen", false, searchSmallLimit, settingWords, setWords};

}  // namespace tiepoint
