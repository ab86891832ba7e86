#pragma once
// What painters need without a display: an application for fonts, and no window.

#include "app/qt_log.h"

#include <QGuiApplication>

#include <optional>

namespace tiepoint::app {

class Offscreen {
public:
    Offscreen() {
        qputenv("QT_QPA_PLATFORM", "offscreen");
        sendQtMessagesToLog();
        application_.emplace(argumentCount_, arguments_);
    }

private:
    int argumentCount_ = 1;
    char name_[9] = "tiepoint";
    char* arguments_[2] = {name_, nullptr};
    std::optional<QGuiApplication> application_;
};

}  // namespace tiepoint::app
