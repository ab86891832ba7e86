#include "app/qt_log.h"

#include <QString>
#include <QtGlobal>

#include <spdlog/spdlog.h>

namespace tiepoint::app {
namespace {

void log(QtMsgType type, const QMessageLogContext&, const QString& message) {
    // Qt warns about a missing runtime folder and the like, which is no concern of the person at the keyboard.
    const auto level = type == QtCriticalMsg || type == QtFatalMsg ? spdlog::level::err : spdlog::level::debug;
    spdlog::log(level, "Qt: {}", message.toStdString());
}

}  // namespace

void sendQtMessagesToLog() { qInstallMessageHandler(log); }

}  // namespace tiepoint::app
