#pragma once
// Before and after on the bench: a tag beside each part and net whose reading an edit or a press changed, and beside those that a class
// would expect to change and that didn't.

#include "core/snapshot/changes.h"
#include "ui/paint/label_places.h"
#include "ui/paint/patch.h"
#include "ui/paint/picture.h"

#include <QString>

namespace tiepoint::ui {

/// "9.2 to 4.6 mA, half"; "10 mA, unchanged"; "3.00 to 4.00 V".
QString changeWords(const Change& change);

struct ChangeSeen {
    QString words;
    bool changed = true;
    int part = -1;  ///< beside which the tag stands
    friend bool operator==(const ChangeSeen&, const ChangeSeen&) = default;
};
/// The currents of a live picture; its volts stand on the tags of nets. Of very many, only those that changed.
std::vector<ChangeSeen> changesSeen(const Picture& picture);
/// Their tags, clear of ids and readings, which `clearance` knows already.
void addChanges(Patches& patches, const std::vector<ChangeSeen>& changes, Clearance clearance);

}  // namespace tiepoint::ui
