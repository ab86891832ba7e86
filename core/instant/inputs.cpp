#include "core/instant/inputs.h"

#include <algorithm>

namespace tiepoint {

bool Inputs::isHeldAt(std::string_view part, double second) const {
    bool named = false;
    for (const Press& press : presses) {
        if (press.part != part) continue;
        if (press.holdsAt(second)) return true;
        named = true;
    }
    return !named && held.contains(part);
}

double Inputs::nextPressAfter(double second) const {
    double next = std::numeric_limits<double>::infinity();
    for (const Press& press : presses) {
        for (const double change : {press.fromSecond, press.untilSecond})
            if (change > second) next = std::min(next, change);
    }
    return next;
}

Inputs Inputs::at(double second) const {
    Inputs then = *this;
    then.presses.clear();
    for (const Press& press : presses) {
        if (isHeldAt(press.part, second))
            then.held.insert(press.part);
        else
            then.held.erase(press.part);
    }
    return then;
}

}  // namespace tiepoint
