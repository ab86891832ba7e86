#pragma once
// What of the tray suits typed words: by name, by value ("4k7", "47 ohm", "100 mA", "green"), or by what it does ("blocks"). Pure functions
// of the catalogue.

#include "ui/tray/tray_items.h"

namespace tiepoint::ui {

/// What was found, best first, and what is to be said about it: that nothing suits, that a part has no such value, or that a value is no
/// preferred one.
struct TrayFound {
    std::vector<TrayItem> items;
    QString words;  ///< empty: nothing needs to be said
};

/// Items that suit every typed word and every quantity; nothing at all for no words. A value that no compartment holds is made to order.
TrayFound findInTray(const QString& typed);

}  // namespace tiepoint::ui
