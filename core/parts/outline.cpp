#include "core/parts/outline.h"

#include <algorithm>
#include <cmath>

namespace tiepoint {

double distanceOutside(const Outline& body, Point at) {
    const Point offset = at - body.centre;
    if (body.shape == BodyShape::Round) return length(offset) - body.halfLength;
    const double c = std::cos(body.angle), s = std::sin(body.angle);
    const Point local{c * offset.x + s * offset.y, c * offset.y - s * offset.x};
    const double x = std::abs(local.x) - body.halfLength, y = std::abs(local.y) - body.halfWidth;
    return x <= 0 || y <= 0 ? std::max(x, y) : std::hypot(x, y);
}

}  // namespace tiepoint
