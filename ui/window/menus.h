#pragma once
// The order of the menus. Holds no behaviour.

#include "ui/window/actions.h"

#include <QMenuBar>

namespace tiepoint::ui {

void fillMenus(QMenuBar& bar, const Actions& actions);

}  // namespace tiepoint::ui
