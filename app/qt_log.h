#pragma once
// Sends Qt's own messages to the program's log, so that standard error holds only what Tiepoint says.

namespace tiepoint::app {

void sendQtMessagesToLog();

}  // namespace tiepoint::app
