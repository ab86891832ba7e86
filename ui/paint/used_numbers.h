#pragma once
// The numbers of columns in use, large enough for a room. Drawn over the small ones that are printed on the boards.

#include "ui/paint/patch.h"
#include "ui/paint/picture.h"

#include <QString>

#include <vector>

namespace tiepoint::ui {

struct UsedNumber {
    QRectF frame;  ///< mm
    QString text;
    friend bool operator==(const UsedNumber& a, const UsedNumber& b) {
        return fromQt(a.frame) == fromQt(b.frame) && a.text == b.text;
    }
};
/// Above row a for what is plugged in there, below row j for the other half; in two lines where columns stand close.
std::vector<UsedNumber> placeUsedNumbers(const Picture& picture);

void addUsedNumbers(Patches& patches, const std::vector<UsedNumber>& numbers, double sizeMm);

}  // namespace tiepoint::ui
