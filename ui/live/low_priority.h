#pragma once

namespace tiepoint::ui {

/// Lets every other thread go before the calling one, where the system can.
void lowerPriority();

}  // namespace tiepoint::ui
