#pragma once
// Too much: which part bears more than its limit, and the words for it.

#include "core/base/figure.h"
#include "ui/paint/label_places.h"
#include "ui/paint/patch.h"
#include "ui/paint/picture.h"

#include <QString>

#include <optional>
#include <vector>

namespace tiepoint::ui {

struct Overload {
    int part = 0;
    QString words;  ///< "59 mA: twice its 30 mA maximum"
    friend bool operator==(const Overload&, const Overload&) = default;
};
/// One for each part of a live picture that is over a limit; the limit with the largest share speaks.
std::vector<Overload> overloads(const Picture& picture);

/// Where the flag of an overload flies.
struct Flag {
    QString words;
    QRectF frame;
    QPointF collarAt;   ///< the middle of its part
    QPointF way{1, 0};  ///< from the collar to the flag
};
/// To the right of the collar, to its left where that hides less, or above or below it where neither side has room: always among what lies on
/// the table. The clearance then knows the flags.
std::vector<Flag> placeFlags(const std::vector<Overload>& overloads, Clearance& clearance);
inline std::vector<Flag> placeFlags(const Picture& picture, Clearance& clearance) {
    return placeFlags(overloads(picture), clearance);
}
/// Collars and flags; takes their frames from `clearance`.
void addOverloads(Patches& patches, const std::vector<Overload>& overloads, Clearance& clearance);

/// Share 2 is "twice its 30 mA maximum"; above 3 "far too much for its 30 mA maximum".
QString overloadWords(const Figure& figure, double limit, const std::string& label);

}  // namespace tiepoint::ui
