#pragma once
// What of the tray suits typed words: by name, by value ("4k7", "green"), or by what it does ("blocks"). Pure functions of the catalogue.

#include "ui/tray/tray_items.h"

namespace tiepoint::ui {

/// Items that suit every typed word, best first; nothing for no words. A resistance that no compartment holds is made to order.
std::vector<TrayItem> findItems(const QString& typed);

}  // namespace tiepoint::ui
