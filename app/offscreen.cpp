#include "app/offscreen.h"

#include "app/qt_log.h"

namespace tiepoint::app {

Offscreen::Offscreen() {
    qputenv("QT_QPA_PLATFORM", "offscreen");
    sendQtMessagesToLog();
    application_.emplace(argumentCount_, arguments_);
}

}  // namespace tiepoint::app
