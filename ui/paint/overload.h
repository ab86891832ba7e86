#pragma once
// Too much: which part bears more than its limit, and the words for it.

#include "ui/paint/picture.h"

#include <QString>

#include <optional>
#include <vector>

namespace tiepoint::ui {

struct Overload {
    int part = 0;
    QString words;  ///< "59 mA: twice its 30 mA maximum"
};
/// One for each part of a live picture that is over a limit; the limit with the largest share speaks.
std::vector<Overload> overloads(const Picture& picture);

/// Share 2 is "twice its 30 mA maximum"; above 3 "far too much for its 30 mA maximum".
QString overloadWords(double figure, double limit, const QString& unit, const QString& label);

}  // namespace tiepoint::ui
