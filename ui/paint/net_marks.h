#pragma once
// What painters ask about nets: where strips lie, which volts a net has, and on which scale.

#include "ui/paint/picture.h"

#include <QPointF>

#include <vector>

namespace tiepoint::ui {

struct StripSpan {
    QPointF first, last;  ///< centres of its end holes, on the bench
    bool rail = false;
    std::vector<Point> holes;  ///< the centres of all
};
/// By strip of the layout.
std::vector<StripSpan> stripSpans(const Picture& picture);

/// From the lowest to the highest volts on the bench; 0 lies on it.
struct VoltScale {
    double low = 0, high = 1;
    double share(double volt) const { return (volt - low) / (high - low); }
};
VoltScale voltScale(const Snapshot& snapshot);

/// Nets that a press would join to one, or does at the moment.
std::vector<int> netsByPress(const Picture& picture, int net);

}  // namespace tiepoint::ui
